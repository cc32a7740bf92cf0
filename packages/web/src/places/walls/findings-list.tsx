import { words } from '../../words/index.js'
import type { PinnedFinding } from './findings.js'

/** What the plan found wrong, in words; each leads to its place. */
export function FindingsList({
  pins,
  goTo,
}: {
  readonly pins: readonly PinnedFinding[]
  readonly goTo: (pin: PinnedFinding) => void
}) {
  if (pins.length === 0) return null
  return (
    <details className="findings">
      <summary>{words.walls.findings(pins.length)}</summary>
      <ol>
        {pins.map(pin => (
          <li key={pin.number}>
            <button type="button" onClick={() => goTo(pin)} className={pin.finding.verdict}>
              <span className="pin-number">{pin.number}</span>
              <span>
                {pin.finding.say} <span className="soft">({pin.finding.source})</span>
              </span>
            </button>
          </li>
        ))}
      </ol>
    </details>
  )
}
