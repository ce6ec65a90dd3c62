#pragma once
#include <cstdlib> // says whether the C library is that of GNU
#ifdef __GLIBC__
#include <malloc.h>
#endif

namespace thinskin::base {

/// Gives back to the system what is free, that of threads which have ended among it; before something that wants room for itself. A wish: where the
/// system knows no such thing nothing happens. About a millisecond.
inline void give_back_memory()
{
#ifdef __GLIBC__
    (void)malloc_trim(0);
#endif
}

} // namespace thinskin::base
