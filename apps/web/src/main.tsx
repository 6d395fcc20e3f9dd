import './tokens.css';
import './styles.css';
import { createRoot } from 'react-dom/client';
import { App } from './App.js';
import { showTheme } from './lib/prefs.js';

showTheme();
createRoot(document.getElementById('root')!).render(<App />);
