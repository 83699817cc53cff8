import { QueryClientProvider } from '@tanstack/preact-query'
import { render } from 'preact'
import { queries } from './api/queries.ts'
import { App } from './app.tsx'
import { keepTrying } from './entry/book-outbox.ts'
import './look/look.css'
import './look/shell.css'

keepTrying()
render(
  <QueryClientProvider client={queries}>
    <App />
  </QueryClientProvider>,
  document.querySelector('#app')!,
)
