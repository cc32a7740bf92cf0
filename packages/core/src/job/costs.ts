/** The lead's own rates. `currency` is an ISO 4217 code. */
export interface Costs {
  readonly currency: string
  readonly machinePerDay: number
  /** Each person, set-up to wash-out. */
  readonly crewPerHour: number
  readonly materialPerTonne: number
  readonly waterPerCubicMetre: number
  readonly pourPerCubicMetre: number
  readonly protectionPerSquareMetre: number
  readonly mobilisation: number
  readonly embedEach: number
  readonly lintelEach: number
  /** The same wall built conventionally, for comparison [per m² of wall face]. */
  readonly conventionalPerSquareMetre: number
}
