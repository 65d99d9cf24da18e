package dropline.harness.stream;

/** One way of saying a state, with what was learnt of it from the messages so far. */
interface Form {

    /** For people: {@code text, key=value}. */
    String words();

    /**
     * Takes a message apart and hands on every state in it.
     *
     * @throws MalformedException if it is none; states before the bad place have been handed on
     */
    void read(Message message, Fields fields, StateSink sink) throws MalformedException;
}
