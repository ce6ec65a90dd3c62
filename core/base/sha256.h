#pragma once
#include <string>
#include <string_view>

namespace thinskin::base {

/// SHA-256 digest of the bytes as 64 lower case hexadecimal digits: names the very file that was checked.
///   32-bit words, all sums modulo 2^32; message padded by 0x80, zeros and its length in bits (FIPS 180-4, 5.1.1 and 6.2)
/// Range: any length below 2^61 bytes. Errors: none. Not for secrets, only for identity.
/// Source: FIPS 180-4 (2015); the test holds the standard's published examples. Own code because none of the
/// libraries the project already needs has a digest.
[[nodiscard]] std::string sha256(std::string_view bytes);

} // namespace thinskin::base
