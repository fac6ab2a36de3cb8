// first, since it takes the token out of the address before the router reads it
import './ask.ts';

// one after the other, each in a task of its own: run in one go they hold the window up
await import('react-dom/client');
await import('#core/contract/record.ts');
await import('#core/contract/machine.ts');
await import('./controls/Key.tsx');
await import('./controls/PickBox.tsx');
await import('./window.tsx');
