import type { ReactNode } from 'react';
import { KeySheetButton } from '../app/key-sheet-button';
import { ScreenMenu } from '../app/screen-menu';
import { ThemeSwitch } from '../app/theme-switch';

/** The bar of both season pages. */
export function SeasonBar({ title, children }: { readonly title: string; readonly children?: ReactNode }) {
  return (
    <header className="shelf-bar">
      {children ?? <strong className="brand">Submark</strong>}
      <h1>{title}</h1>
      <ScreenMenu />
      <ThemeSwitch />
      <KeySheetButton />
    </header>
  );
}
