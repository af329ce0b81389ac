import { serveJobs } from './serve-jobs'
import { SHELF_JOBS } from './shelf-answers'

serveJobs(SHELF_JOBS)
