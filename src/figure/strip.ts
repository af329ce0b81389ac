import type { Lay } from '../plan/plan'
import type { DoneSign } from './legend'
import { textWidthEm } from './text-width'

/** What a mark on a strip stands for. */
export type StripMarkKind = 'station' | 'bend' | 'splice' | 'tag' | 'crossing' | 'caution'

/** Something on the line, at its running distance along the ground. */
export interface StripMark {
  readonly kind: StripMarkKind
  readonly groundM: number
  readonly name: string
  /** Of a tag: the pair can be opened and measured there. */
  readonly isTestPoint?: boolean
}

/** A scale along the strip: 0 at the line's start, `total` at the end of its wire, in proportion to the wire between them. */
export interface StripScale {
  readonly name: string
  readonly total: number
}

/** A line as its strip is drawn from. */
export interface StripLine {
  readonly groundM: number
  readonly wireM: number
  readonly legs: readonly { readonly lay: Lay; readonly fromM: number; readonly toM: number }[]
  /** What was done on it, by running distances along the ground. */
  readonly done: readonly { readonly sign: DoneSign; readonly fromM: number; readonly toM: number }[]
  readonly marks: readonly StripMark[]
  /** Running distances along the ground in the person's unit. */
  readonly distance: { readonly name: string; readonly perM: number }
  readonly scales: readonly StripScale[]
  readonly wireAt: (groundM: number) => number
  readonly groundAt: (wireM: number) => number
  /** Heights by running distance, where they are known, and the wire's own where it hangs. */
  readonly ground: readonly (readonly [groundM: number, heightM: number])[]
  readonly hung: readonly (readonly (readonly [groundM: number, heightM: number])[])[]
  readonly heightText: (heightM: number) => string
}

/** The stretch of the line that one drawing shows, and how it joins its neighbours. */
export interface StripStretch {
  readonly fromM: number
  readonly toM: number
  readonly from?: string
  readonly to?: string
}

export interface StripLabel {
  readonly text: string
  readonly x: number
  readonly y: number
  readonly anchor: 'start' | 'middle' | 'end'
  readonly isBold: boolean
  /** A stroke down to the mark that it names, mm; none where it stands right over it. */
  readonly leader?: readonly [x: number, fromY: number, toY: number]
}

/** A strip as drawn, mm. */
export interface StripDrawing {
  readonly widthMm: number
  readonly heightMm: number
  readonly left: number
  readonly right: number
  readonly wireY: number
  readonly legs: readonly { readonly lay: Lay; readonly fromX: number; readonly toX: number }[]
  readonly done: readonly { readonly sign: DoneSign; readonly fromX: number; readonly toX: number }[]
  readonly marks: readonly {
    readonly kind: StripMarkKind
    readonly x: number
    readonly isTestPoint: boolean
  }[]
  readonly labels: readonly StripLabel[]
  readonly matches: readonly { readonly x: number; readonly text: string; readonly isStart: boolean }[]
  readonly profile: {
    readonly body: string
    readonly ground: string
    readonly hung: string
    readonly heights: readonly { readonly y: number; readonly text: string }[]
  } | null
  readonly scales: readonly {
    readonly name: string
    readonly y: number
    readonly ticks: readonly { readonly x: number; readonly text: string }[]
  }[]
}
const LETTER_MM = 2.8
export const TIER_MM = 3.5

/** Width of a text on a strip, mm. */
export const widthOf = (text: string, isBold: boolean) => textWidthEm(text, isBold) * LETTER_MM
export const emOf = (mm: number) => mm / LETTER_MM
export const round = (mm: number) => Math.round(mm * 100) / 100
