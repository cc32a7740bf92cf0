export type { Field, FieldKind, Standing } from './field.js'
export { editedJob, fieldText, quantityText, resetField, standingOf, typedInto } from './field.js'
export { JobField } from './job-field.js'
export { useJobText } from './job-text.js'
