import { useState } from 'react'
import { words } from '../words/index.js'

const slot = 'dawnlift.told'

const told = (): readonly string[] => {
  try {
    return JSON.parse(localStorage.getItem(slot) ?? '[]') as readonly string[]
  } catch {
    return []
  }
}

/** One line that says what a place is for, until it has been read. */
export function Quiet({ children }: { readonly children: string }) {
  const [shown, setShown] = useState(() => !told().includes(children))
  if (!shown) return null
  const close = () => {
    setShown(false)
    try {
      localStorage.setItem(slot, JSON.stringify([...told(), children]))
    } catch {
      // Where nothing can be kept the line comes again at the next visit.
    }
  }
  return (
    <p className="quiet">
      {children}{' '}
      <button type="button" className="number" onClick={close}>
        {words.understood}
      </button>
    </p>
  )
}
