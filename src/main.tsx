import './look.css'
