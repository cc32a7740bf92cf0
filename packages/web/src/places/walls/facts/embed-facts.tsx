import type { Embed } from '@dawnlift/core/job'
import { ChoiceField, LengthField } from '../../../parts/index.js'
import { words } from '../../../words/index.js'
import { applyEdits } from '../edits/apply-edits.js'
import { lengthText, type Units } from '../edits/length-text.js'
import { changeEdits, type Entry } from '../edits/part-edits.js'
import { embedEntry } from '../edits/part-entry.js'
import { layerHint } from './layer-hint.js'

const { facts, kinds, faces, heads, methods, trades } = words.walls
const embedKinds = ['box', 'sleeve', 'pipe', 'strap', 'anchor', 'niche', 'chase', 'plate'] as const
const choices = <T extends string>(table: Readonly<Record<T, string>>) =>
  (Object.keys(table) as T[]).map(value => ({ value, label: table[value] }))

/** Niches and chases that the print leaves free; one that has a head it may not have shows it, to be taken off. */
const mayCorbel = ({ kind, method, head }: Embed): boolean =>
  head !== undefined || ((kind === 'niche' || kind === 'chase') && method === 'gap')

export function EmbedFacts({
  embed,
  units,
  layerHeight,
}: {
  readonly embed: Embed
  readonly units: Units
  readonly layerHeight: number
}) {
  const change = (changes: Entry) =>
    applyEdits(raw => changeEdits(raw, 'embeds', embed.id, changes, () => embedEntry(embed, units)))
  const length = (key: 'at' | 'bottom' | 'width' | 'height' | 'depth', hint?: string) => (
    <LengthField
      label={facts[key]}
      value={lengthText(embed[key], units)}
      commit={text => change({ [key]: text })}
      {...(hint ? { hint } : {})}
    />
  )
  return (
    <>
      <ChoiceField
        label={facts.kind}
        value={embed.kind}
        options={embedKinds.map(value => ({ value, label: kinds[value] }))}
        commit={kind => change({ kind })}
      />
      <ChoiceField
        label={facts.trade}
        value={embed.trade}
        options={choices(trades)}
        commit={trade => change({ trade })}
      />
      <ChoiceField
        label={facts.face}
        value={embed.face}
        options={choices(faces)}
        commit={face => change({ face })}
      />
      <ChoiceField
        label={facts.method}
        value={embed.method}
        options={choices(methods)}
        commit={method => change({ method })}
      />
      {length('at')}
      {length('bottom', layerHint(embed.bottom, layerHeight, units))}
      {length('width')}
      {length('height')}
      {length('depth')}
      {mayCorbel(embed) ? (
        <ChoiceField
          label={facts.head}
          value={embed.head ?? 'flat'}
          options={choices(heads)}
          commit={head => change({ head })}
        />
      ) : null}
    </>
  )
}
