import { Component, type ReactNode } from 'react';
import { CopyDetails } from '#renderer/controls/CopyDetails.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { Sheet } from '#renderer/controls/Sheet.tsx';
import { detailsText } from '#renderer/words/detailsWords.ts';
import { frameWords } from '#renderer/words/frameWords.ts';
import { keepTyped, type TypedBox, typedBoxes } from './typedText.ts';

type Props = { at: string; children: ReactNode };
/** `noScreen`: the screen's own file did not come, so nobody is there to give it */
type State = { brokeAt: string | null; noScreen: boolean; detail: string };

const NOT_FETCHED = /dynamically imported module|preload CSS|importing a module/i;

/**
 * A screen that breaks takes only itself down; the tabs stay, and another screen starts afresh. What was typed on it is
 * read off before it goes and kept.
 */
export class Broken extends Component<Props, State> {
  override state: State = { brokeAt: null, noScreen: false, detail: '' };

  static getDerivedStateFromError(error: unknown): State {
    const detail = error instanceof Error ? `${error.name}: ${error.message}` : typeof error;
    return { brokeAt: '', noScreen: NOT_FETCHED.test(detail), detail };
  }

  static getDerivedStateFromProps(props: Props, state: State): State | null {
    if (state.brokeAt === '') return { ...state, brokeAt: props.at };
    return state.brokeAt !== null && state.brokeAt !== props.at ? { ...state, brokeAt: null, noScreen: false } : null;
  }

  /** the page still stands as it was before the break */
  override getSnapshotBeforeUpdate(_was: Props, { brokeAt }: State): TypedBox[] {
    return brokeAt === null && this.state.brokeAt !== null ? typedBoxes() : [];
  }

  override componentDidUpdate(_was: Props, _state: State, typed: TypedBox[]): void {
    keepTyped(this.props.at, typed);
  }

  override render(): ReactNode {
    if (this.state.brokeAt === null) return this.props.children;
    return (
      <Sheet title={frameWords.brokeTitle}>
        {this.state.noScreen ? (
          <FaultBox
            fault={{ code: 'no-connection', facts: {} }}
            keys={<Key onPress={() => window.location.reload()}>{frameWords.tryAgain}</Key>}
          />
        ) : (
          <FaultBox
            said={{ what: frameWords.brokeHead, safe: frameWords.brokeSafe, next: frameWords.brokeNext }}
            keys={
              <>
                <Key onPress={() => this.setState({ brokeAt: null })}>{frameWords.tryAgain}</Key>
                <CopyDetails
                  details={detailsText({ operation: this.props.at, detail: this.state.detail }, new Date())}
                />
              </>
            }
          />
        )}
      </Sheet>
    );
  }
}
