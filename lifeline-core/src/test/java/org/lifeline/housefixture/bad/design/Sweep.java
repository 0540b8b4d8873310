package org.lifeline.housefixture.bad.design;

import org.lifeline.housefixture.bad.report.Sheet;
import org.lifeline.housefixture.bad.verify.BorrowedCheck;

/** Looks up to the report and aside to the check. */
public final class Sweep {
    @Override
    public String toString() {
        return new Sheet().toString() + new BorrowedCheck();
    }
}
