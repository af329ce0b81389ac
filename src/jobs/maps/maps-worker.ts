import { serveJobs } from '../serve-jobs'
import { MAPS_JOBS } from './maps-answers'

serveJobs(MAPS_JOBS)
