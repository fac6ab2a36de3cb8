import { Fragment, useDeferredValue, useEffect } from 'react';
import { matchRoute, Redirect, Route, Switch, useLocation, useRouter } from 'wouter';
import { recordState } from '#core/contract/record.ts';
import { shopRead } from '#core/contract/shop.ts';
import { FillingRule } from './controls/FillingRule.tsx';
import { Key } from './controls/Key.tsx';
import { Later } from './controls/Later.tsx';
import { FaultBox } from './controls/Notice.tsx';
import { Sheet } from './controls/Sheet.tsx';
import { listenForAccelerators, useAccelerator } from './controls/useAccelerator.ts';
import { AnotherRecord } from './frame/AnotherRecord.tsx';
import { Broken } from './frame/Broken.tsx';
import { FindBox } from './frame/FindBox.tsx';
import { Frame } from './frame/Frame.tsx';
import { fetchNext } from './frame/fetchNext.ts';
import { TypedOffer } from './frame/TypedOffer.tsx';
import { listenForTyping } from './frame/typedText.ts';
import { HelpKey, HelpStrip } from './help/Help.tsx';
import { closeHelp, openHelp, useHelp } from './help/helpOpen.ts';
import { Tour } from './help/Tour.tsx';
import { RecordProvider, useRecord } from './record.tsx';
import { HoursStrip } from './screens/hours/HoursStrip.tsx';
import { RecallNews } from './screens/recall/RecallNews.tsx';
import { nextScreens, routes, type ScreenRoute } from './screens/routes.tsx';
import { useAsk } from './useAsk.ts';
import { frameWords } from './words/frameWords.ts';

const tabs = routes.filter((route) => route.tab !== undefined);
const home = tabs[0] ?? routes[0];
// while the record is asked for
if (/^#?\/?(machines)?$/.test(window.location.hash)) home?.screen.fetch();

/** The window: a screen by its address, inside the frame, on the open record. */
export function App() {
  const [here] = useLocation();
  useEffect(() => listenForAccelerators(window), []);
  useEffect(() => listenForTyping(document), []);
  const free = routes.filter((route) => route.free);
  return (
    <Broken at={here}>
      <Switch>
        {free.map((route) => (
          <Route key={route.path} path={route.path}>
            <route.screen
              meanwhile={
                <Frame tabs={[]} lit={undefined}>
                  {null}
                </Frame>
              }
            />
          </Route>
        ))}
        <Route>
          <OnRecord />
        </Route>
      </Switch>
    </Broken>
  );
}

/** Without an open record only the start screen stands. */
function OnRecord() {
  const record = useAsk(recordState, {});
  // what comes with the record is drawn in small pieces: in one go it would hold the window up as it opens
  const known = useDeferredValue(record.value !== undefined);
  const start = routes.find((route) => route.start);
  if (known && record.value?.open) {
    return (
      <RecordProvider record={record.value}>
        <Screens />
      </RecordProvider>
    );
  }
  if (known && record.value && start) {
    return (
      <Frame tabs={[]} lit={undefined}>
        <start.screen meanwhile={null} />
      </Frame>
    );
  }
  return (
    <Frame tabs={[]} lit={undefined}>
      <Sheet title="">
        {record.fault ? (
          <FaultBox fault={record.fault} keys={<Key onPress={record.again}>{frameWords.tryAgain}</Key>} />
        ) : (
          <FillingRule words={frameWords.opening} />
        )}
      </Sheet>
    </Frame>
  );
}

function Screens() {
  const [here, goTo] = useLocation();
  // a farmer rings, whatever screen stands
  useAccelerator('V', () => goTo('/phone'));
  useTheme();
  useEffect(() => fetchNext(nextScreens, window), []);
  const { parser } = useRouter();
  const route = routes.find(({ path, free }) => !free && matchRoute(parser, path, here)[0]);
  useEffect(leaveTabs, [route]);
  if (route) return <Framed route={route} here={here} />;
  return home ? <Redirect to={home.path} replace /> : null;
}

/** Gone to from its tab or found, a screen has the keys: the frame stands on, and would keep the focus. */
function leaveTabs(): void {
  const { activeElement } = document;
  if (activeElement instanceof HTMLElement && activeElement.closest('.tabs')) activeElement.blur();
}

/** The frame stands while screens come and go in it; what lies over a screen goes with it. */
function Framed({ route, here }: { route: ScreenRoute; here: string }) {
  const help = useHelp(here);
  const { recordId } = useRecord();
  return (
    <Frame
      tabs={tabs}
      lit={route.tab ?? route.under}
      find={
        <>
          <Later meanwhile={<div className="find" />}>
            <FindBox />
          </Later>
          <HelpKey onPress={() => (help ? closeHelp() : openHelp(here))} />
        </>
      }
    >
      <Fragment key={route.path}>
        {help ? <HelpStrip key={`${here} ${help.topic}`} topic={help.topic} onClose={closeHelp} /> : <Tour />}
        <AnotherRecord />
        <HoursStrip key={recordId} />
        {route === home && <RecallNews />}
        <TypedOffer at={here} />
        <Broken at={here}>
          <Route path={route.path}>
            <route.screen meanwhile={<NotYetHere route={route} />} />
          </Route>
        </Broken>
      </Fragment>
    </Frame>
  );
}

/** The screen's own code is on its way: its tab's word stands for its heading. */
function NotYetHere({ route }: { route: ScreenRoute }) {
  return (
    <Sheet title={route.tab ?? route.under ?? ''}>
      <div data-code-awaited>
        <FillingRule words={frameWords.fetching} />
      </div>
    </Sheet>
  );
}

/** Light or dark as the shop chose, else as the system asks. */
function useTheme(): void {
  const shop = useAsk(shopRead, {});
  const theme = shop.value?.settings.theme ?? 'system';
  useEffect(() => {
    const root = document.documentElement;
    if (theme === 'system') delete root.dataset.theme;
    else root.dataset.theme = theme;
  }, [theme]);
}
