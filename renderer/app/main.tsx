import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { chooseClient } from '../host/choose-client';
import { App } from './app';
import { applyStoredTheme } from './theme';
import '../theme/themes.css';

const place = document.getElementById('root');
if (!place) throw new Error('the page has no root');
applyStoredTheme();
createRoot(place).render(
  <StrictMode>
    <App host={chooseClient()} />
  </StrictMode>,
);
