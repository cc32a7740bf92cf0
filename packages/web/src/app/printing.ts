const scheme = 'data-mantine-color-scheme'

/** Paper is white whatever the screen is: while the browser prints, the page is in its light colours. */
export function lightOnPaper(): void {
  const page = document.documentElement
  let before: string | null = null
  addEventListener('beforeprint', () => {
    before = page.getAttribute(scheme)
    page.setAttribute(scheme, 'light')
  })
  addEventListener('afterprint', () => {
    if (before) page.setAttribute(scheme, before)
  })
}
