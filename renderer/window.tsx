import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { Router } from 'wouter';
import { useHashLocation } from 'wouter/use-hash-location';
import { App } from './App.tsx';
import { onOpenedHere } from './whichRecord.ts';
// last: what it says holds over what controls say of themselves
import './styles/base.css';

const queries = new QueryClient({
  defaultOptions: {
    // the core is on this computer: a missing network connection pauses nothing, and a refusal stays a refusal
    queries: {
      networkMode: 'always',
      retry: false,
      staleTime: 30_000,
      refetchOnWindowFocus: false,
      throwOnError: false,
    },
    mutations: { networkMode: 'always', retry: false },
  },
});

onOpenedHere(() => queries.removeQueries({ type: 'inactive' }));

const root = document.getElementById('root');
if (!root) throw new Error('Broken invariant: index.html has #root');
createRoot(root).render(
  <StrictMode>
    <QueryClientProvider client={queries}>
      <Router hook={useHashLocation}>
        <App />
      </Router>
    </QueryClientProvider>
  </StrictMode>,
);
