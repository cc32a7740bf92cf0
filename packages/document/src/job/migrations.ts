import { type Document, isMap, type YAMLMap } from 'yaml'

/** One step from a version of the document to the next; comments stay where they are. */
export interface Migration {
  readonly from: number
  readonly to: number
  readonly says: string
  readonly change: (document: Document) => void
}

/** In order. A step that has been released is never edited; its before/after fixtures neither. */
export const migrations: readonly Migration[] = [
  {
    from: 0,
    to: 1,
    says: 'Drafts wrote print.beadHeight; it is print.layerHeight now, since a bead is as high as its layer.',
    change: document => {
      const print = document.get('print')
      if (isMap(print)) renameKey(print, 'beadHeight', 'layerHeight')
    },
  },
]

function renameKey(map: YAMLMap, from: string, to: string): void {
  const pair = map.items.find(item => String(item.key) === from)
  if (pair && !map.has(to)) pair.key = map.items.length > 0 ? keyLike(pair.key, to) : to
}

/** The new name in the old key's place, with its comments. */
function keyLike(key: unknown, name: string): unknown {
  if (typeof key === 'object' && key !== null && 'value' in key) {
    key.value = name
    return key
  }
  return name
}
