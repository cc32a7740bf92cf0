import { Popover } from '@mantine/core'
import type { ReactNode } from 'react'
import { words } from '../words/index.js'

/** What stands behind a number: how it is made, from what, on whose word. */
export interface Behind {
  readonly how: string
  readonly inputs?: readonly (readonly [name: string, value: string])[]
  readonly source: string
  readonly caution?: string
}

/** A number that can be opened to its formula, inputs and source. */
export function OpenNumber({
  children,
  behind,
  label,
}: {
  readonly children: ReactNode
  readonly behind: Behind
  readonly label?: string
}) {
  return (
    <Popover withArrow shadow="md" width={340} position="bottom-start">
      <Popover.Target>
        <button type="button" className="number" aria-label={label}>
          {children}
        </button>
      </Popover.Target>
      <Popover.Dropdown>
        <p style={{ marginTop: 0 }}>{behind.how}</p>
        {behind.inputs && (
          <table className="plain">
            <tbody>
              {behind.inputs.map(([name, value]) => (
                <tr key={name}>
                  <th scope="row">{name}</th>
                  <td>{value}</td>
                </tr>
              ))}
            </tbody>
          </table>
        )}
        <p className="soft" style={{ marginBottom: 0 }}>
          {words.source(behind.source)}
        </p>
        {behind.caution && <p className="caution">{behind.caution}</p>}
      </Popover.Dropdown>
    </Popover>
  )
}

/** A large number with what it is underneath. */
export function Figure({ value, what }: { readonly value: ReactNode; readonly what: string }) {
  return (
    <div>
      <div className="figure">{value}</div>
      <div className="soft">{what}</div>
    </div>
  )
}

/** Stands beside every number somebody could get hurt by. */
export const Caution = ({ children }: { readonly children: ReactNode }) => (
  <p className="caution" role="note">
    {children}
  </p>
)
