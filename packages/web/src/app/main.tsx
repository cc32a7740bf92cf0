import './library-styles.js'
import './look.css'
import './places.css'
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
