package org.lifeline.housefixture.bad.report.document;

import org.lifeline.housefixture.bad.report.section.Chapter;

/** A block that knows the chapter that it stands in. */
public final class Block {
    private Block() {}

    static Chapter chapter() {
        return new Chapter();
    }
}
