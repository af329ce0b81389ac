import { serveJobs } from '../jobs/serve-jobs'
import { PAPER_JOBS } from './paper-jobs'

serveJobs(PAPER_JOBS)
