import { FAR_JOBS } from './far-answers'
import { serveJobs } from './serve-jobs'

serveJobs(FAR_JOBS)
