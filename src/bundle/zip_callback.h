// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <zip.h>

#include <exception>
#include <string>

namespace qw::bundle {

/// What libzip calls to read or write. Exceptions must not pass through libzip's C, so the first one is kept in
/// `failure`, which all callbacks of one archive share, and libzip is told of an error instead; whoever called
/// libzip throws `failure` again. Must live longer than the zip_t that uses its source.
class ZipCallback {
public:
    explicit ZipCallback(std::exception_ptr& failure) : failure_(failure) {}
    virtual ~ZipCallback() = default;
    ZipCallback(const ZipCallback&) = delete;
    ZipCallback& operator=(const ZipCallback&) = delete;

    /// A source that calls this; libzip owns it. Null, and `error` set, when there is no memory.
    zip_source_t* source(zip_error_t* error);

protected:
    virtual zip_int64_t call(void* data, zip_uint64_t length, zip_source_cmd_t command) = 0;
    /// -1, after keeping what ZIP_SOURCE_ERROR will be told.
    zip_int64_t fail(int zip_code, int system_code);
    zip_int64_t unsupported() { return fail(ZIP_ER_OPNOTSUPP, 0); }

private:
    static zip_int64_t entry(void* self, void* data, zip_uint64_t length, zip_source_cmd_t command);
    zip_int64_t guarded(void* data, zip_uint64_t length, zip_source_cmd_t command) noexcept;

    std::exception_ptr& failure_;
    int zip_code_ = ZIP_ER_OK, system_code_ = 0;
};

/// A zip_error_t that is always released.
class ZipError {
public:
    ZipError() { zip_error_init(&error_); }
    ~ZipError() { zip_error_fini(&error_); }
    ZipError(const ZipError&) = delete;
    ZipError& operator=(const ZipError&) = delete;
    zip_error_t* get() { return &error_; }
    std::string text() { return zip_error_strerror(&error_); }
    int code() const { return zip_error_code_zip(&error_); }

private:
    zip_error_t error_;
};

}  // namespace qw::bundle
