import { CIRCUIT_JOBS } from './circuit-answers'
import { serveJobs } from './serve-jobs'

serveJobs(CIRCUIT_JOBS)
