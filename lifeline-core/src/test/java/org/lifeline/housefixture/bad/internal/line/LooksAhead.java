package org.lifeline.housefixture.bad.internal.line;

import org.lifeline.housefixture.bad.internal.path.Follower;

/** A state that looks at what follows it. */
public class LooksAhead {
    final Follower follower = new Follower();
}
