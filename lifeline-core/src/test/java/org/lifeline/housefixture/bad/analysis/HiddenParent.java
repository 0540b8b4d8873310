package org.lifeline.housefixture.bad.analysis;

import org.lifeline.housefixture.bad.internal.line.Element;
import org.lifeline.housefixture.bad.internal.line.Hidden;

/** Not seen by a caller, but what it hands down is. */
abstract class HiddenParent implements Hidden {
    public Element handedDown() {
        return new Element();
    }
}
