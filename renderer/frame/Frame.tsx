import type { ReactNode } from 'react';
import { Link, useLocation } from 'wouter';
import type { ScreenRoute } from '#renderer/screens/routes.tsx';
import { shared } from '#renderer/words/english.ts';
import { frameWords } from '#renderer/words/frameWords.ts';
import './frame.css';

/** The window: name, tabs and find box along the top, the sheet below. */
export function Frame({
  tabs,
  lit,
  find,
  children,
}: {
  tabs: readonly ScreenRoute[];
  lit: string | undefined;
  find?: ReactNode;
  children: ReactNode;
}) {
  return (
    <div className="window">
      <header className="tabs">
        <span className="program">{shared.program}</span>
        <nav aria-label={frameWords.screens}>
          {tabs.map((route) => (
            <Tab key={route.path} route={route} lit={lit === route.tab} />
          ))}
        </nav>
        {find}
      </header>
      {children}
    </div>
  );
}

function Tab({ route, lit }: { route: ScreenRoute; lit: boolean }) {
  const [here] = useLocation();
  return (
    <Link
      href={route.path}
      className={lit ? 'tab lit' : 'tab'}
      {...(lit && { 'aria-current': here === route.path ? 'page' : 'true' })}
    >
      {route.tab}
    </Link>
  );
}
