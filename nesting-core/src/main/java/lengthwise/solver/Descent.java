package lengthwise.solver;

/**
 * Slides a piece from a position to a near one where it costs least, with exact depths.
 *
 * <p>Near a position the cost is a sum of planes cut off at zero: each hindrance falls at unit rate along its way out.
 * So the least lies where the way out of two of them is complete at once, or of one, or on the edge of the region.
 * These points are tried first, then the step down the slope, then ever shorter steps along the axes.
 */
final class Descent {
    private static final int ROUNDS = 10;
    private static final double LEAST_GAIN = 1e-3;

    private final Arrangement state;
    private final double reach;
    private final Contact contact = new Contact();
    private final int[] near;
    private final Pair[] nearPair;
    private final double[] nearWeight;
    private int nears;
    private final Reach reachOfFellows = new Reach();
    private boolean hasFellows;

    /** The two dearest hindrances of the last evaluation, and the slope. */
    private double firstCost;

    private double firstDepth;
    private double firstX;
    private double firstY;
    private double secondCost;
    private double secondDepth;
    private double secondX;
    private double secondY;
    private double slopeX;
    private double slopeY;

    private double lowX;
    private double highX;
    private double lowY;
    private double highY;

    private double bestTryCost;
    private double bestTryX;
    private double bestTryY;

    /** Where the last run ended. */
    double x;

    double y;

    Descent(Arrangement state, double reach) {
        this.state = state;
        this.reach = reach;
        this.near = new int[state.all];
        this.nearPair = new Pair[state.all];
        this.nearWeight = new double[state.all];
    }

    /**
     * Slides a piece and returns the cost of where it came to, in {@link #x} and {@link #y}.
     *
     * @param cell the cell of the region that it may not leave
     * @param worthwhile cost above which a result is of no use
     */
    double run(int piece, Variant variant, int cell, double startX, double startY, double worthwhile) {
        double[] cells = state.cells(variant);
        lowX = Math.max(cells[cell], startX - reach);
        highX = Math.min(cells[cell + 1], startX + reach);
        lowY = Math.max(cells[cell + 2], startY - reach);
        highY = Math.min(cells[cell + 3], startY + reach);
        gather(piece, variant);
        x = Math.max(lowX, Math.min(highX, startX));
        y = Math.max(lowY, Math.min(highY, startY));
        double cost = evaluate(x, y, Double.MAX_VALUE);
        // the cost falls no faster than the slope at which all ways out agree
        double lastLineX = 0;
        double lastLineY = 0;
        double lastLineAt = 0;
        boolean lastLine = false;
        for (int round = 0; round < ROUNDS && cost > 0; round++) {
            double oneX = firstX;
            double oneY = firstY;
            double oneDepth = firstDepth;
            double lineAt = oneX * x + oneY * y + oneDepth;
            double slope = Math.sqrt(slopeX * slopeX + slopeY * slopeY);
            double downX = slope > 0 ? slopeX / slope : 0;
            double downY = slope > 0 ? slopeY / slope : 0;
            double fall = slope > 0 ? Math.min(cost / slope, reach) : 0;
            double atX = x;
            double atY = y;
            bestTryCost = cost;
            if (secondCost > 0) {
                tryCorner(oneX, oneY, lineAt, secondX, secondY, secondX * x + secondY * y + secondDepth);
            }
            if (lastLine) {
                tryCorner(oneX, oneY, lineAt, lastLineX, lastLineY, lastLineAt);
            }
            attempt(atX + oneX * oneDepth, atY + oneY * oneDepth);
            attempt(atX + downX * fall, atY + downY * fall);
            if (bestTryCost > cost - LEAST_GAIN * cost) {
                attempt(atX + 0.3 * downX * fall, atY + 0.3 * downY * fall);
                if (bestTryCost > cost - LEAST_GAIN * cost) {
                    break;
                }
            }
            lastLine = true;
            lastLineX = oneX;
            lastLineY = oneY;
            lastLineAt = lineAt;
            x = bestTryX;
            y = bestTryY;
            cost = evaluate(x, y, Double.MAX_VALUE);
        }
        if (cost > 0 && cost < 2 * worthwhile) {
            cost = alongAxes(cost);
        }
        return cost;
    }

    private double alongAxes(double startCost) {
        double cost = startCost;
        double least = reach / 24;
        for (double step = reach / 3; step > least && cost > 0; ) {
            bestTryCost = cost;
            double atX = x;
            double atY = y;
            attempt(atX + step, atY);
            attempt(atX - step, atY);
            attempt(atX, atY + step);
            attempt(atX, atY - step);
            if (bestTryCost < cost - LEAST_GAIN * cost) {
                x = bestTryX;
                y = bestTryY;
                cost = bestTryCost;
            } else {
                step /= 2;
            }
        }
        return cost;
    }

    private void tryCorner(double ax, double ay, double a, double bx, double by, double b) {
        double det = ax * by - ay * bx;
        if (Math.abs(det) > 0.05) {
            attempt((a * by - b * ay) / det, (ax * b - bx * a) / det);
        }
    }

    private void attempt(double toX, double toY) {
        double px = Math.max(lowX, Math.min(highX, toX));
        double py = Math.max(lowY, Math.min(highY, toY));
        double cost = cost(px, py, bestTryCost);
        if (cost < bestTryCost) {
            bestTryCost = cost;
            bestTryX = px;
            bestTryY = py;
        }
    }

    /** Lists what can hinder the piece within its reach. */
    private void gather(int piece, Variant variant) {
        nears = 0;
        hasFellows = state.nearness.fellowsOf(piece).length > 0;
        if (hasFellows) {
            reachOfFellows.find(state, piece, variant.shape().box());
        }
        double[] weights = state.weight[piece];
        for (int j = 0; j < state.all; j++) {
            if (j == piece) {
                continue;
            }
            Pair pair = state.pairs.of(state.shape[j], variant.shape());
            if (highX - state.x[j] > pair.minX
                    && lowX - state.x[j] < pair.maxX
                    && highY - state.y[j] > pair.minY
                    && lowY - state.y[j] < pair.maxY) {
                near[nears] = j;
                nearPair[nears] = pair;
                nearWeight[nears] = weights[j];
                nears++;
            }
        }
    }

    private double cost(double px, double py, double bound) {
        double cost = 0;
        for (int k = 0; k < nears && cost < bound; k++) {
            int j = near[k];
            cost += nearWeight[k] * nearPair[k].hindrance(px - state.x[j], py - state.y[j]);
        }
        return hasFellows ? cost + reachOfFellows.costAtX(px) + reachOfFellows.costAtY(py) : cost;
    }

    private double evaluate(double px, double py, double bound) {
        double cost = 0;
        firstCost = 0;
        firstDepth = 0;
        firstX = 0;
        firstY = 0;
        secondCost = 0;
        slopeX = 0;
        slopeY = 0;
        int hindering = 0;
        for (int k = 0; k < nears && cost < bound; k++) {
            int j = near[k];
            nearPair[k].look(px - state.x[j], py - state.y[j], contact);
            if (contact.depth > 0) {
                double weighted = nearWeight[k] * contact.depth;
                cost += weighted;
                slopeX += nearWeight[k] * contact.outX;
                slopeY += nearWeight[k] * contact.outY;
                note(weighted, contact.depth, contact.outX, contact.outY);
                bringForward(k, hindering++);
            }
        }
        if (hasFellows) {
            cost += reachOfFellows.lookAtX(px);
            slopeX += reachOfFellows.slope;
            note(reachOfFellows.dearest, reachOfFellows.depth, reachOfFellows.way, 0);
            cost += reachOfFellows.lookAtY(py);
            slopeY += reachOfFellows.slope;
            note(reachOfFellows.dearest, reachOfFellows.depth, 0, reachOfFellows.way);
        }
        return cost;
    }

    /** Puts what hinders before what does not, so that dear tries are given up early. */
    private void bringForward(int k, int to) {
        int j = near[k];
        near[k] = near[to];
        near[to] = j;
        Pair pair = nearPair[k];
        nearPair[k] = nearPair[to];
        nearPair[to] = pair;
        double weight = nearWeight[k];
        nearWeight[k] = nearWeight[to];
        nearWeight[to] = weight;
    }

    /** Notes a hindrance if it is one of the two dearest. */
    private void note(double weighted, double depth, double outX, double outY) {
        if (weighted > firstCost) {
            secondCost = firstCost;
            secondDepth = firstDepth;
            secondX = firstX;
            secondY = firstY;
            firstCost = weighted;
            firstDepth = depth;
            firstX = outX;
            firstY = outY;
        } else if (weighted > secondCost) {
            secondCost = weighted;
            secondDepth = depth;
            secondX = outX;
            secondY = outY;
        }
    }
}
