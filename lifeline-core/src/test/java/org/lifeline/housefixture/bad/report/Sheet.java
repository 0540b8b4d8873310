package org.lifeline.housefixture.bad.report;

/** A place to look at. */
public final class Sheet {
    @Override
    public String toString() {
        return "sheet";
    }
}
