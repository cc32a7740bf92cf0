/** Work that takes long: done beside the terminal, so that it shows how far it is and can be stopped. */
export interface Work<Parcel, Done> {
  readonly name: string
  /** Pure but for reading the job's folder. `progress` answers `false` when nobody waits any more. */
  readonly run: (parcel: Parcel, progress: (stage: string, share: number) => boolean) => Promise<Done>
}
