import { createTheme, type MantineColorsTuple } from '@mantine/core'

/** Slate blue of drawing ink; the only hue the frame uses. Meaning has colours of its own, in `look.css`. */
const ink: MantineColorsTuple = [
  '#eef3f6',
  '#dbe5ea',
  '#b5c9d4',
  '#8cabbc',
  '#6a92a8',
  '#55839b',
  '#487b95',
  '#376881',
  '#2a5a72',
  '#1d3a4c',
]

export const theme = createTheme({
  primaryColor: 'ink',
  primaryShade: { light: 8, dark: 7 },
  autoContrast: true,
  colors: { ink },
  fontFamily: "'IBM Plex Sans', 'Source Sans 3', 'Segoe UI', system-ui, sans-serif",
  fontSizes: { xs: '0.8rem', sm: '0.9rem', md: '1rem', lg: '1.15rem', xl: '1.4rem' },
  defaultRadius: 'xs',
  cursorType: 'pointer',
  respectReducedMotion: true,
})
