#pragma once
// Allocations: how often the program has asked for memory.

namespace benchmark {

/// Calls of malloc and its aligned kin so far, by any thread and any library of the program.
long allocations();

}  // namespace benchmark
