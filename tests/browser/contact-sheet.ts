import type { Page } from 'playwright-core'

/** Pictures of one place beside and below one another, as one small picture. */
export function contactSheet(blank: Page, shots: readonly Buffer[]): Promise<Buffer> {
  return blank
    .evaluate(
      async sources => {
        const images = await Promise.all(
          sources.map(async source => {
            const image = new Image()
            image.src = source
            await image.decode()
            return image
          }),
        )
        const widths = images.map(each => each.width)
        const canvas = document.createElement('canvas')
        canvas.width = widths.reduce((sum, each) => sum + each, 0)
        canvas.height = Math.max(...images.map(each => each.height))
        const context = canvas.getContext('2d')!
        let left = 0
        for (const image of images) {
          context.drawImage(image, left, 0)
          left += image.width
        }
        return canvas.toDataURL('image/png').split(',')[1]!
      },
      shots.map(shot => `data:image/png;base64,${shot.toString('base64')}`),
    )
    .then(text => Buffer.from(text, 'base64'))
}

export interface Difference {
  /** Share of pixels that differ by more than the eye lets pass. */
  readonly share: number
  /** Both pictures are of one size. */
  readonly sameSize: boolean
}

/** How far one picture is from another; `apart`: the most by which a channel of a pixel may differ, of 255. */
export function difference(blank: Page, one: Buffer, other: Buffer, apart: number): Promise<Difference> {
  return blank.evaluate(
    async ({ sources, apart }) => {
      const pixels = await Promise.all(
        sources.map(async source => {
          const image = new Image()
          image.src = source
          await image.decode()
          const canvas = document.createElement('canvas')
          canvas.width = image.width
          canvas.height = image.height
          const context = canvas.getContext('2d')!
          context.drawImage(image, 0, 0)
          return context.getImageData(0, 0, image.width, image.height)
        }),
      )
      const [a, b] = [pixels[0]!, pixels[1]!]
      if (a.width !== b.width || a.height !== b.height) return { share: 1, sameSize: false }
      let count = 0
      for (let at = 0; at < a.data.length; at += 4) {
        const channels = [0, 1, 2].map(c => Math.abs(a.data[at + c]! - b.data[at + c]!))
        if (Math.max(...channels) > apart) count += 1
      }
      return { share: count / (a.width * a.height), sameSize: true }
    },
    { sources: [one, other].map(each => `data:image/png;base64,${each.toString('base64')}`), apart },
  )
}
