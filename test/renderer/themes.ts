/**
 * Themes as an editor hands them to an output: the class of its body and its variables.
 * Read from the workbench of VS Code 1.139.1 with its own themes; `classic` is what a theme without colours of its own gets.
 */
export interface Theme {
  readonly kind:
    | 'vscode-light'
    | 'vscode-dark'
    | 'vscode-high-contrast'
    | 'vscode-high-contrast vscode-high-contrast-light';
  readonly variables: Readonly<Record<string, string>>;
}

const fonts = {
  '--vscode-font-family': 'system-ui, "Ubuntu", "Droid Sans", sans-serif',
  '--vscode-editor-font-family': '"Droid Sans Mono", "monospace", monospace',
  '--vscode-editor-font-size': '14px',
};

export const themes = {
  light: {
    kind: 'vscode-light',
    variables: {
      ...fonts,
      '--vscode-editor-background': '#ffffff',
      '--vscode-editor-foreground': '#202020',
      '--vscode-foreground': '#202020',
      '--vscode-descriptionForeground': '#606060',
      '--vscode-errorForeground': '#ad0707',
      '--vscode-editorWarning-foreground': '#bf8803',
      '--vscode-focusBorder': '#0069cc',
      '--vscode-textCodeBlock-background': '#eaeaea',
    },
  },
  dark: {
    kind: 'vscode-dark',
    variables: {
      ...fonts,
      '--vscode-editor-background': '#121314',
      '--vscode-editor-foreground': '#bbbebf',
      '--vscode-foreground': '#bfbfbf',
      '--vscode-descriptionForeground': '#8c8c8c',
      '--vscode-errorForeground': '#f48771',
      '--vscode-editorWarning-foreground': '#cca700',
      '--vscode-focusBorder': 'rgba(57, 148, 188, 0.7)',
      '--vscode-textCodeBlock-background': '#242526',
    },
  },
  'dark modern': {
    kind: 'vscode-dark',
    variables: {
      ...fonts,
      '--vscode-editor-background': '#1f1f1f',
      '--vscode-editor-foreground': '#cccccc',
      '--vscode-foreground': '#cccccc',
      '--vscode-descriptionForeground': '#9d9d9d',
      '--vscode-errorForeground': '#f85149',
      '--vscode-editorWarning-foreground': '#cca700',
      '--vscode-focusBorder': '#0078d4',
      '--vscode-textCodeBlock-background': '#2b2b2b',
    },
  },
  classic: {
    kind: 'vscode-light',
    variables: {
      ...fonts,
      '--vscode-editor-background': '#ffffff',
      '--vscode-editor-foreground': '#333333',
      '--vscode-foreground': '#616161',
      '--vscode-descriptionForeground': '#717171',
      '--vscode-errorForeground': '#a1260d',
      '--vscode-editorWarning-foreground': '#bf8803',
      '--vscode-focusBorder': '#0090f1',
      '--vscode-textCodeBlock-background': 'rgba(220, 220, 220, 0.4)',
    },
  },
  'high contrast': {
    kind: 'vscode-high-contrast',
    variables: {
      ...fonts,
      '--vscode-editor-background': '#000000',
      '--vscode-editor-foreground': '#ffffff',
      '--vscode-foreground': '#ffffff',
      '--vscode-descriptionForeground': 'rgba(255, 255, 255, 0.7)',
      '--vscode-errorForeground': '#f48771',
      '--vscode-editorWarning-foreground': '#ffd370',
      '--vscode-focusBorder': '#f38518',
      '--vscode-textCodeBlock-background': '#000000',
      '--vscode-contrastBorder': '#6fc3df',
    },
  },
  'high contrast light': {
    kind: 'vscode-high-contrast vscode-high-contrast-light',
    variables: {
      ...fonts,
      '--vscode-editor-background': '#ffffff',
      '--vscode-editor-foreground': '#292929',
      '--vscode-foreground': '#292929',
      '--vscode-descriptionForeground': 'rgba(41, 41, 41, 0.7)',
      '--vscode-errorForeground': '#b5200d',
      '--vscode-editorWarning-foreground': '#895503',
      '--vscode-focusBorder': '#006bbd',
      '--vscode-textCodeBlock-background': '#f2f2f2',
      '--vscode-contrastBorder': '#0f4a85',
    },
  },
} as const satisfies Readonly<Record<string, Theme>>;
