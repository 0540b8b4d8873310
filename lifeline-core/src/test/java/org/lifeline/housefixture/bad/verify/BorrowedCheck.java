package org.lifeline.housefixture.bad.verify;

import org.lifeline.housefixture.bad.internal.line.Element;
import org.lifeline.housefixture.bad.internal.numeric.Solver;

/** A check that borrows from the solver. */
public final class BorrowedCheck {
    @Override
    public String toString() {
        return new Element() + Solver.name();
    }
}
