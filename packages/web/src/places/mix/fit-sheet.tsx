import { type CurveFit, type MixFit, type MixModel, stiffness, yieldStress } from '@dawnlift/core/mix'
import { Caution } from '../../parts/index.js'
import { words } from '../../words/index.js'
import { type Growth, GrowthChart, ResidualChart } from './growth-chart.js'
import { Outliers } from './outliers.js'

/** How the mix stiffens: tests, curves and their doubt; or the default mix, said to be so. */
export function FitSheet({ mix, fit }: { readonly mix: MixModel; readonly fit: MixFit | undefined }) {
  return (
    <section className="sheet" aria-labelledby="fit-title">
      <h2 id="fit-title">{mix.name}</h2>
      <p>
        {fit ? words.fitted.from(mix.provenance) : words.defaultMix}{' '}
        {words.fitted.lower(Math.round(1 / mix.lowerProbability))}
      </p>
      <div className="charts">
        <Fitted
          what={words.fitted.yield}
          curve={fit?.yield}
          assumed={modelBand(mix, (side, age) => yieldStress(mix[side].yield, age))}
        />
        <Fitted
          what={words.fitted.stiffness}
          curve={fit?.stiffness}
          assumed={modelBand(mix, (side, age) => stiffness(mix[side].stiffness, age))}
        />
      </div>
      {fit && <Sentences title={words.fitted.notCovered} lines={fit.assumed} />}
      {fit && <Sentences title={words.fitted.lookAgain} lines={fit.cautions} />}
      <Caution>{words.mixCaution}</Caution>
    </section>
  )
}

function Fitted({
  what,
  curve,
  assumed,
}: {
  readonly what: string
  readonly curve: CurveFit<unknown> | undefined
  readonly assumed: Growth['band']
}) {
  const growth: Growth = curve
    ? { what, band: curve.band, points: curve.points, outliers: curve.outliers }
    : { what, band: assumed, points: [], outliers: [] }
  return (
    <figure className="fitted">
      <GrowthChart growth={growth} />
      {curve && <ResidualChart growth={growth} />}
      <figcaption>
        {curve ? (
          <>
            <p>{curve.why}</p>
            <Candidates curve={curve} />
            <Outliers places={curve.outliers} />
          </>
        ) : (
          <p className="soft">{words.fitted.noTests}</p>
        )}
      </figcaption>
    </figure>
  )
}

/** The curves that were tried, and what the tests say for each. */
const Candidates = ({ curve }: { readonly curve: CurveFit<unknown> }) => (
  <details>
    <summary>{words.fitted.tried(curve.candidates.length, Math.round(curve.scatter * 100))}</summary>
    <table className="plain wide ruled">
      <thead>
        <tr>
          {words.fitted.curveHeads.map(head => (
            <th key={head} scope="col">
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {curve.candidates.map(({ kind, parameters, aicc, weight }) => (
          <tr key={kind}>
            <th scope="row">{kind === curve.kind ? <strong>{words.fitted.chosen(kind)}</strong> : kind}</th>
            <td>{parameters}</td>
            <td>{aicc === undefined ? words.fitted.tooFew : aicc.toFixed(1)}</td>
            <td>{words.fitted.percent(Math.round(weight * 100))}</td>
          </tr>
        ))}
      </tbody>
    </table>
    <table className="plain wide ruled">
      <thead>
        <tr>
          {words.fitted.parameterHeads.map(head => (
            <th key={head} scope="col">
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {curve.parameters.map(({ name, value, standardError, unit }) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td>
              {Number(value.toPrecision(4))} {unit}
            </td>
            <td>
              {standardError === undefined
                ? words.fitted.notKnown
                : `± ${Number(standardError.toPrecision(2))} ${unit}`}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  </details>
)

const Sentences = ({ title, lines }: { readonly title: string; readonly lines: readonly string[] }) =>
  lines.length === 0 ? null : (
    <>
      <h3>{title}</h3>
      <ul>
        {lines.map(line => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </>
  )

/** The model's own curves as a band; its upper edge is as far above as the lower is below. */
function modelBand(mix: MixModel, value: (side: 'fitted' | 'lower', age: number) => number): Growth['band'] {
  const steps = 24
  return Array.from({ length: steps + 1 }, (_, index) => {
    const age = (mix.testedTo * index) / steps
    const [fitted, lower] = [value('fitted', age), value('lower', age)]
    return { age, fitted, lower, upper: 2 * fitted - lower }
  })
}
