import { answerCircuits, type CircuitQuestion } from './circuit-questions'

self.onmessage = ({ data }: MessageEvent<CircuitQuestion>) => {
  answerCircuits(data, (answer) => self.postMessage(answer))
}
