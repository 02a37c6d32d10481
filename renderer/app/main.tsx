import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { chooseClient } from '../host/choose-client';
import { windowMemory } from '../host/window-memory';
import { saveBeforeLeaving } from '../documents/open-autosaves';
import { App } from './app';
import { serveWindow } from './serve-window';
import { startTheme } from '../ui/theme';
import '../ui/theme/theme.css';

const place = document.getElementById('root');
if (!place) throw new Error('the page has no root');
startTheme();
saveBeforeLeaving(window, document);
const host = chooseClient();
serveWindow(host);
void windowMemory.connect(host);
createRoot(place).render(
  <StrictMode>
    <App host={host} />
  </StrictMode>,
);
