import { renamedKey } from './splice-yaml.js'

/** One step from a version of the document to the next, on its text: comments and blanks stay where they are. */
export interface Migration {
  readonly from: number
  readonly to: number
  readonly says: string
  readonly change: (text: string) => string
}

/** In order. A step that has been released is never edited; its before/after fixtures neither. */
export const migrations: readonly Migration[] = [
  {
    from: 0,
    to: 1,
    says: 'Drafts wrote print.beadHeight; it is print.layerHeight now, since a bead is as high as its layer.',
    change: text => renamedKey(text, ['print', 'beadHeight'], 'layerHeight'),
  },
]
