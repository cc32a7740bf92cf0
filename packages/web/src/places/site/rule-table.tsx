import { Caution } from '../../parts/index.js'
import { words } from '../../words/index.js'
import { JobField, standingOf, useJobText } from '../fields/index.js'
import { guarding, ruleField, ruleNames, ruleOrigin, ruleWords } from './rule-words.js'

/** Every rule with its value, where it comes from, and the way back to the usual one. */
export function RuleTable() {
  const { raw } = useJobText()
  const isLoosened = ruleNames.some(name => guarding.has(name) && standingOf(raw, ['rules', name]).given)
  return (
    <section className="sheet" aria-labelledby="rules-title">
      <h2 id="rules-title">{words.site.rules}</h2>
      <table className="rules">
        <thead>
          <tr>
            {words.site.ruleHeads.map(head => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {ruleNames.map(name => {
            const origin = ruleOrigin(name, standingOf(raw, ['rules', name]).given)
            return (
              <tr key={name}>
                <th scope="row">{ruleWords[name]}</th>
                <td>
                  <JobField field={ruleField(name)} bare />
                </td>
                <td>
                  {origin.source}
                  <br />
                  <span className="soft">{origin.why}</span>
                </td>
              </tr>
            )
          })}
        </tbody>
      </table>
      <Caution>{isLoosened ? words.ownRules : words.caution}</Caution>
    </section>
  )
}
