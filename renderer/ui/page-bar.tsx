import type { ReactNode } from 'react';
import { KeySheetButton } from './key-sheet-button';
import { ScreenMenu } from './screen-menu';
import { ThemeSwitch } from './theme-switch';
import './page-bar.css';
import { uiWords } from '#core/words/ui';

interface Props {
  readonly title: ReactNode;
  /** The way back, on a page below a screen of the menu; else the app's name stands there. */
  readonly back?: ReactNode;
  /** What can be done on this page; the main thing last. */
  readonly children?: ReactNode;
}

/** The bar over every page but the bench: where one is, where one can go, the look, and what can be done here. */
export function PageBar({ title, back, children }: Props) {
  return (
    <header className="page-bar">
      {back ?? <strong className="brand">{uiWords('submark')}</strong>}
      <h1>{title}</h1>
      <ScreenMenu />
      <ThemeSwitch />
      <KeySheetButton />
      {children}
    </header>
  );
}
