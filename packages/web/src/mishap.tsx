import { say } from '@sumpbook/fluid'
import { Component, type ComponentChildren } from 'preact'

/** A page that failed says so and leaves the others standing; what was typed and what waits is kept on the device. */
export class Mishap extends Component<{ children: ComponentChildren }, { error: Error | null }> {
  override state = { error: null as Error | null }

  static override getDerivedStateFromError(error: Error) {
    return { error }
  }

  override componentDidCatch(error: Error) {
    console.error(error)
  }

  override render() {
    if (this.state.error === null) return this.props.children
    return (
      <div role="alert">
        <h1>{say('This page failed')}</h1>
        <p class="fault">{this.state.error.message}</p>
        <p>
          {say('The fault is the app’s, not yours. What was typed and what waits to be sent is kept on this device.')}
        </p>
        <button type="button" onClick={() => this.setState({ error: null })}>
          {say('Open it again')}
        </button>
      </div>
    )
  }
}
