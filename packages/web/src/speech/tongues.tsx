import { languages, speech } from '@sumpbook/fluid'
import { Fragment } from 'preact'
import { Link } from 'wouter-preact'
import { tongues } from './reading.ts'
import './speech.css'

/** The way to another language for who cannot read this one: each by its own name, "Deutsch · Español". */
export function Tongues() {
  const others = languages.filter((language) => language !== speech().language)
  return (
    <Link href="/language" class="tongues">
      {others.map((language, index) => (
        <Fragment key={language}>
          {index > 0 && ' · '}
          <span lang={language}>{tongues[language]}</span>
        </Fragment>
      ))}
    </Link>
  )
}
