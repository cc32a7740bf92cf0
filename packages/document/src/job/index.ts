export type { Assumed } from './assumed.js'
export { assumedTable } from './assumed.js'
export type { JobWeather } from './build-site.js'
export type { Default, DefaultPath } from './default-table.js'
export { defaultTable } from './default-table.js'
export type {
  ColumnType,
  DrawingMapping,
  DrawingNote,
  DrawingUnit,
  DrawingWalls,
  EmbedType,
  LayerUse,
  OpeningType,
  WallType,
} from './drawing-walls.js'
export type { JobEdit } from './edit-job.js'
export { editJob } from './edit-job.js'
export type { JobFiles } from './job-files.js'
export { readJobFiles } from './job-files.js'
export type { JobDocument } from './job-schema.js'
export { documentVersion, jobJsonSchema } from './job-schema.js'
export { newJobText } from './new-job.js'
export type { ParsedJob, ParseOptions } from './parse-job.js'
export { parseJob } from './parse-job.js'
export type { RawJob } from './raw-job.js'
export { rawJob } from './raw-job.js'
export type { SiteFile } from './site-file.js'
export { parseSiteFile, siteFileJsonSchema } from './site-file.js'
