import './look.css'

if (import.meta.env.PROD) void navigator.serviceWorker?.register('./sw.js')
