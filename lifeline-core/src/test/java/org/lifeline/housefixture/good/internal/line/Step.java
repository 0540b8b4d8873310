package org.lifeline.housefixture.good.internal.line;

import org.lifeline.housefixture.good.internal.numeric.Trace;

/** Internal types may show each other. */
public record Step(Trace trace) {}
