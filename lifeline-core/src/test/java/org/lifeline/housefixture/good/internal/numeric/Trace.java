package org.lifeline.housefixture.good.internal.numeric;

import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;

/** Goes through the door that leads to EJML. */
public final class Trace {
    private final DMatrixRMaj matrix = new DMatrixRMaj(2, 2);

    public double value() {
        return CommonOps_DDRM.trace(matrix);
    }
}
