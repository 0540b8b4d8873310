package org.lifeline.housefixture.bad.analysis;

import java.util.List;
import java.util.Map;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.exception.TooManyEvaluationsException;
import org.ejml.data.DMatrixRMaj;
import org.lifeline.housefixture.bad.internal.line.Element;
import org.lifeline.housefixture.bad.internal.line.Hidden;
import org.lifeline.housefixture.bad.internal.numeric.Solver;

/** Shows a caller what is internal, in every place where a type can stand. */
public class Leaks<E extends Element> extends BrentSolver implements Hidden {
    public final Solver shared;
    protected final DMatrixRMaj forHeirs = new DMatrixRMaj(1, 1);
    final Solver ofNoConcern;

    public Leaks(Solver solver) {
        shared = solver;
        ofNoConcern = solver;
    }

    public Element returned() {
        return new Element();
    }

    public Map<String, List<? extends Element>> inList() {
        return Map.of();
    }

    public Element[][] inArray() {
        return new Element[0][];
    }

    public void taken(DMatrixRMaj matrix) {
        forHeirs.setTo(matrix);
    }

    public <H extends Hidden> void bounded(List<String> names) {
        names.clear();
    }

    public void thrown() throws TooManyEvaluationsException {
        throw new TooManyEvaluationsException(1);
    }

    protected Element heirsOnly() {
        return ofNoConcern();
    }

    Element ofNoConcern() {
        return new Element();
    }

    /** Nested and public: seen by a caller. */
    public static final class Nested {
        public Element returned() {
            return new Element();
        }
    }

    /** Nested and package-private: seen by nobody outside. */
    static final class OfNoConcern {
        public Element ofNoConcern() {
            return new Element();
        }
    }
}
