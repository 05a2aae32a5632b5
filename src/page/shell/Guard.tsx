/** A fault of the page must not lock the person out: it is said, and there is a way to save the design and to start again. */
import { Component, type ComponentChildren } from 'preact';

interface GuardProps {
  readonly children: ComponentChildren;
  /** Hands the design out as a file. */
  readonly rescue: () => void;
  /** Forgets what is stored and loads the page again. */
  readonly afresh: () => void;
}

export class Guard extends Component<GuardProps, { wrong: string | null }> {
  override state = { wrong: null };

  override componentDidCatch(error: unknown): void {
    this.setState({ wrong: error instanceof Error ? error.message : String(error) });
  }

  override render() {
    if (this.state.wrong === null) return this.props.children;
    return (
      <main class="fault">
        <h1>The page failed. The fault is in the page, not in your design</h1>
        <p>{this.state.wrong}</p>
        <button type="button" onClick={this.props.rescue}>
          Save the design as a file
        </button>{' '}
        <button type="button" onClick={this.props.afresh}>
          Forget what is stored and start again
        </button>
      </main>
    );
  }
}
