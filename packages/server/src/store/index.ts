export type { FolderStore, StoredDocument } from './folder-store.js'
export { openFolderStore, revisionOf } from './folder-store.js'
