import { Component, type ReactNode } from 'react';
import { Key } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { frameWords } from '#renderer/words/frameWords.ts';

type Props = { at: string; children: ReactNode };
type State = { brokeAt: string | null };

/** A screen that breaks takes only itself down; the tabs stay, and another screen starts afresh. */
export class Broken extends Component<Props, State> {
  override state: State = { brokeAt: null };

  static getDerivedStateFromError(): Partial<State> {
    return { brokeAt: '' };
  }

  static getDerivedStateFromProps(props: Props, state: State): State | null {
    if (state.brokeAt === '') return { brokeAt: props.at };
    return state.brokeAt !== null && state.brokeAt !== props.at ? { brokeAt: null } : null;
  }

  override render(): ReactNode {
    if (this.state.brokeAt === null) return this.props.children;
    return (
      <main className="sheet">
        <div className="sheet-body">
          <FaultBox
            said={{ what: frameWords.brokeHead, safe: frameWords.brokeSafe, next: frameWords.brokeNext }}
            keys={<Key onPress={() => this.setState({ brokeAt: null })}>{frameWords.tryAgain}</Key>}
          />
        </div>
      </main>
    );
  }
}
