/** The job as the app holds it: the document's text and the files beside it, by name. */
export interface JobFiles {
  readonly document: string
  readonly beside: Readonly<Record<string, Uint8Array>>
}
