// Nothing: the target that compiles the headers of the tests (CMakeLists.txt) needs a source.
