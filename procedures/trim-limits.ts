/** Run-out of a plug face where no manual says otherwise: 0.05 mm, whole reading (common practice, no source). */
export const RUN_OUT_USUAL_M = 0.05e-3;

/** A torque is as wanted within so many percent of it (common practice, no source). */
export const TORQUE_WITHIN_PERCENT = 5;
