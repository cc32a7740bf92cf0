import './library-styles.js'
// What all places share, in this order; each place brings its own looks along.
import './look.css'
import './frame.css'
import '../parts/parts.css'
import '../places/places.css'
import './touch.css'
import './paper.css'
import { MantineProvider } from '@mantine/core'
import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { Board } from './board.js'
import { openFirstJob } from './first-job.js'
import { lightOnPaper } from './printing.js'
import { theme } from './theme.js'

createRoot(document.getElementById('app')!).render(
  <StrictMode>
    <MantineProvider theme={theme} defaultColorScheme="auto">
      <Board />
    </MantineProvider>
  </StrictMode>,
)
lightOnPaper()
void openFirstJob()
if ('serviceWorker' in navigator && import.meta.env.PROD) void navigator.serviceWorker.register('/offline.js')
