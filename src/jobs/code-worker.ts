import { CODE_JOBS } from './code-reading'
import { serveJobs } from './serve-jobs'

serveJobs(CODE_JOBS)
