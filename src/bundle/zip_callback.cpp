// SPDX-License-Identifier: GPL-3.0-or-later
#include "bundle/zip_callback.h"

#include <cerrno>

namespace qw::bundle {

zip_source_t* ZipCallback::source(zip_error_t* error) { return zip_source_function_create(&ZipCallback::entry, this, error); }

zip_int64_t ZipCallback::fail(int zip_code, int system_code) {
    zip_code_ = zip_code;
    system_code_ = system_code;
    return -1;
}

zip_int64_t ZipCallback::entry(void* self, void* data, zip_uint64_t length, zip_source_cmd_t command) {
    return static_cast<ZipCallback*>(self)->guarded(data, length, command);
}

zip_int64_t ZipCallback::guarded(void* data, zip_uint64_t length, zip_source_cmd_t command) noexcept {
    if (command == ZIP_SOURCE_FREE) return 0;
    if (command == ZIP_SOURCE_ERROR) {
        int* codes = static_cast<int*>(data);
        codes[0] = zip_code_;
        codes[1] = system_code_;
        return 2 * sizeof(int);
    }
    try {
        return call(data, length, command);
    } catch (...) {
        if (!failure_) failure_ = std::current_exception();
        return fail(ZIP_ER_INTERNAL, EIO);
    }
}

}  // namespace qw::bundle
