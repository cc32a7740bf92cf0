import { type ComponentType, type LazyExoticComponent, lazy } from 'react'

export interface Place {
  readonly name: 'site' | 'walls' | 'mix' | 'days' | 'trades' | 'today' | 'tally' | 'calc'
  readonly view: LazyExoticComponent<ComponentType>
}

/** The seven places along the job, and the formula book. Each loads when it is first gone to. */
export const places: readonly Place[] = [
  { name: 'site', view: lazy(() => import('../places/site/index.js').then(m => ({ default: m.SitePlace }))) },
  {
    name: 'walls',
    view: lazy(() => import('../places/walls/index.js').then(m => ({ default: m.WallsPlace }))),
  },
  { name: 'mix', view: lazy(() => import('../places/mix/index.js').then(m => ({ default: m.MixPlace }))) },
  { name: 'days', view: lazy(() => import('../places/days/index.js').then(m => ({ default: m.DaysPlace }))) },
  {
    name: 'trades',
    view: lazy(() => import('../places/trades/index.js').then(m => ({ default: m.TradesPlace }))),
  },
  {
    name: 'today',
    view: lazy(() => import('../places/today/index.js').then(m => ({ default: m.TodayPlace }))),
  },
  {
    name: 'tally',
    view: lazy(() => import('../places/tally/index.js').then(m => ({ default: m.TallyPlace }))),
  },
  { name: 'calc', view: lazy(() => import('../places/calc/index.js').then(m => ({ default: m.CalcPlace }))) },
]
