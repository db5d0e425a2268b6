package lengthwise.solver;

/** What a search tells while it runs. */
public sealed interface SearchEvent {
    /** A shorter legal layout was found; the first is the one of the constructive pass. */
    record Improved(Layout layout, Progress progress) implements SearchEvent {}

    /** Nothing new; comes now and then so that a progress line can move. */
    record Working(Progress progress) implements SearchEvent {}
}
