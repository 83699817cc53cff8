/** As much of the package's types as is used here. */
declare module 'kalman-filter' {
  export class State {
    constructor(state: { mean: number[][]; covariance: number[][]; index?: number })
    readonly mean: number[][]
    readonly covariance: number[][]
  }
  export class KalmanFilter {
    constructor(options: {
      dynamic: {
        dimension: number
        init: { mean: number[][]; covariance: number[][] }
        transition: number[][]
        covariance: number[][]
      }
      observation: { dimension: number; stateProjection: number[][]; covariance: number[][] }
    })
    filter(options: { previousCorrected: State; observation: number[] }): State
  }
}
