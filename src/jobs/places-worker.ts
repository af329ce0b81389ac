import { PLACES_JOBS } from './places-reading'
import { serveJobs } from './serve-jobs'

serveJobs(PLACES_JOBS)
