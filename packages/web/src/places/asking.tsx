import type { Plan } from '@dawnlift/core/plan'
import { Button, Group, Progress } from '@mantine/core'
import { useState } from 'react'
import { type Progress as Report, stopAsking } from '../state/index.js'
import { words } from '../words/index.js'

/** A question under way in the worker. */
export interface Question {
  readonly share: number
  /** What it is at, once it says so. */
  readonly stage?: string
}

/** Asks the worker something about this plan; an answer about an older plan is not shown. */
export function useAsked<T>(plan: Plan) {
  const [state, setState] = useState<{
    readonly plan: Plan
    readonly answer?: T
    readonly asking?: Question
  }>({
    plan,
  })
  const now = state.plan === plan ? state : { plan }
  const ask = (question: (progress: Report) => Promise<T | undefined>) => {
    setState({ plan, asking: { share: 0 } })
    void question((stage, share) =>
      setState(old => (old.asking ? { ...old, asking: { stage, share } } : old)),
    ).then(answer => setState(answer === undefined ? { plan } : { plan, answer }))
  }
  return { ...now, ask } as {
    readonly answer?: T
    readonly asking?: Question
    readonly ask: typeof ask
  }
}

/** How far it is, and the way to stop it. */
export function Asking({ asking, what }: { readonly asking?: Question | undefined; readonly what: string }) {
  if (!asking) return null
  return (
    <Group gap="sm" role="status" my="sm">
      <span>{what} …</span>
      <Progress value={asking.share * 100} w={180} aria-label={what} />
      <Button variant="default" onClick={stopAsking}>
        {words.cancel}
      </Button>
    </Group>
  )
}
