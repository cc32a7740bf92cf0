import { english } from './english.js'
import { englishPlaces } from './english-places.js'

export const words = { ...english, ...englishPlaces } as const
