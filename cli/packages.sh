# Debian packages that the scripts need, and how missing ones are installed. Sourced by cli/quickstart and tests/run.
build_packages=(g++ cmake make libeigen3-dev libyaml-cpp-dev libspdlog-dev libfmt-dev doctest-dev libcli11-dev nlohmann-json3-dev libspectra-dev)
test_packages=(clang libclang-rt-dev)
gui_packages=(libimgui-dev libstb-dev libglfw3-dev libgl-dev libfreetype-dev libpng-dev fonts-b612 fonts-osifont fonts-dejavu-core)
gui_test_packages=(xvfb xauth libgl1-mesa-dri) # a screen that nobody sees, with OpenGL in software
optional_packages=(libbenchmark-dev) # tests/bench is built where it is found; neither script installs it

is_installed() { [ "$(dpkg-query -W -f='${db:Status-Status}' "$1" 2>/dev/null)" = installed ]; }

as_root() { if [ "$(id -u)" -eq 0 ]; then "$@"; else sudo "$@"; fi; }

# The package lists are refreshed only when something is missing: a second run needs no network.
install_missing() {
    local missing=() package
    for package in "$@"; do is_installed "$package" || missing+=("$package"); done
    [ ${#missing[@]} -eq 0 ] && return
    echo "installing: ${missing[*]}"
    as_root apt-get update -q
    as_root env DEBIAN_FRONTEND=noninteractive apt-get install -q -y --no-install-recommends "${missing[@]}"
}
