// SPDX-License-Identifier: GPL-3.0-or-later
#include "artwork/colour.h"

#include "artwork/colour_distance.h"
#include "artwork/damage.h"
#include "artwork/picture.h"
#include "base/digest.h"

#include <algorithm>
#include <cstdlib>
#include <lcms2.h>
#include <map>
#include <mutex>
#include <new>

namespace qw::artwork {

namespace {

class Opened {
public:
    explicit Opened(cmsHPROFILE profile) : profile_(profile) {}
    ~Opened() {
        if (profile_) cmsCloseProfile(profile_);
    }
    Opened(Opened&& other) noexcept : profile_(std::exchange(other.profile_, nullptr)) {}
    Opened& operator=(Opened&&) = delete;
    cmsHPROFILE get() const { return profile_; }

private:
    cmsHPROFILE profile_;
};

class Curve {
public:
    explicit Curve(const std::optional<double>& gamma) : curve_(gamma ? cmsBuildGamma(nullptr, 1 / *gamma) : srgb()) {
        if (!curve_) throw std::bad_alloc();
    }
    ~Curve() { cmsFreeToneCurve(curve_); }
    Curve(const Curve&) = delete;
    Curve& operator=(const Curve&) = delete;
    cmsToneCurve* get() const { return curve_; }

private:
    // IEC 61966-2-1: ((V + 0.055) / 1.055) ^ 2.4 from V = 0.04045, V / 12.92 below.
    static cmsToneCurve* srgb() {
        const double parameters[] = {2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045};
        return cmsBuildParametricToneCurve(nullptr, 4, parameters);
    }
    cmsToneCurve* curve_;
};

Opened profile_of(const Primaries& primaries, Model model) {
    const Curve curve(primaries.gamma);
    cmsCIExyY white{primaries.white_x, primaries.white_y, 1};
    if (model == Model::grey) return Opened(cmsCreateGrayProfile(&white, curve.get()));
    const cmsCIExyYTRIPLE rgb{{primaries.red_x, primaries.red_y, 1}, {primaries.green_x, primaries.green_y, 1}, {primaries.blue_x, primaries.blue_y, 1}};
    cmsToneCurve* const curves[] = {curve.get(), curve.get(), curve.get()};
    return Opened(cmsCreateRGBProfile(&white, &rgb, curves));
}

std::optional<Model> model_of(cmsHPROFILE profile) {
    switch (cmsGetColorSpace(profile)) {
        case cmsSigGrayData: return Model::grey;
        case cmsSigRgbData: return Model::rgb;
        case cmsSigCmykData: return Model::cmyk;
        default: return std::nullopt;
    }
}

cmsUInt32Number format_of(const SampleLayout& layout, bool result) {
    const bool cmyk = layout.colours == 4;
    const auto colours = static_cast<unsigned>(cmyk && result ? 3 : layout.colours);
    const unsigned space = colours == 1 ? PT_GRAY : colours == 3 ? PT_RGB : PT_CMYK;
    return COLORSPACE_SH(space) | CHANNELS_SH(colours) | BYTES_SH(static_cast<unsigned>(layout.bytes)) |
           EXTRA_SH(layout.alpha ? 1u : 0u) | FLAVOR_SH(layout.inverted && !result ? 1u : 0u);
}

cmsHTRANSFORM transform_of(cmsHPROFILE from, const SampleLayout& layout) {
    const bool grey = layout.colours == 1;
    const Opened to = profile_of(Primaries{}, grey ? Model::grey : Model::rgb);
    if (!to.get()) throw std::bad_alloc();
    // lcms joins the curves of grey into one of 4096 points, which in the darkest greys is wrong by up to 76 levels.
    return cmsCreateTransform(from, format_of(layout, false), to.get(), format_of(layout, true), INTENT_RELATIVE_COLORIMETRIC,
                              cmsFLAGS_BLACKPOINTCOMPENSATION | (layout.alpha ? cmsFLAGS_COPY_ALPHA : 0u) | (grey ? cmsFLAGS_NOOPTIMIZE : 0u));
}

unsigned colours_of(Model model) { return model == Model::grey ? 1 : model == Model::rgb ? 3 : 4; }

/// All greys, white among them; for RGB a grid of 9 × 9 × 9 colours, for CMYK one of 5 × 5 × 5 × 5.
std::vector<std::uint8_t> probe(Model model) {
    std::vector<std::uint8_t> samples;
    const auto level = [](int step, int steps) { return static_cast<std::uint8_t>(step * 255 / steps); };
    if (model != Model::cmyk)
        for (int v = 0; v < 256; ++v) samples.insert(samples.end(), colours_of(model), static_cast<std::uint8_t>(v));
    if (model == Model::rgb)
        for (int i = 0; i < 9 * 9 * 9; ++i) samples.insert(samples.end(), {level(i / 81, 8), level(i / 9 % 9, 8), level(i % 9, 8)});
    if (model == Model::cmyk)
        for (int i = 0; i < 5 * 5 * 5 * 5; ++i)
            samples.insert(samples.end(), {level(i / 125, 4), level(i / 25 % 5, 4), level(i / 5 % 5, 4), level(i % 5, 4)});
    return samples;
}

/// The probe as the conversion leaves it.
std::vector<std::uint8_t> converted(const Profile& profile, const std::vector<std::uint8_t>& samples) {
    const unsigned colours = colours_of(profile.model());
    const auto pixels = static_cast<std::uint32_t>(samples.size() / colours);
    std::vector<std::uint8_t> result(std::size_t{pixels} * std::min(colours, 3u));
    Conversion(profile, {static_cast<int>(colours), false, 1, false}).apply(samples.data(), result.data(), pixels);
    return result;
}

/// The probe as the profile means it.
std::vector<Lab> meant(cmsHPROFILE profile, const SampleLayout& layout, const std::vector<std::uint8_t>& samples) {
    const Opened lab(cmsCreateLab4Profile(nullptr));
    if (!lab.get()) throw std::bad_alloc();
    const std::unique_ptr<void, void (*)(void*)> transform(
        cmsCreateTransform(profile, format_of(layout, false), lab.get(), TYPE_Lab_DBL, INTENT_RELATIVE_COLORIMETRIC, cmsFLAGS_BLACKPOINTCOMPENSATION),
        cmsDeleteTransform);
    if (!transform) damaged("its colour profile cannot be used to convert its colours");
    std::vector<Lab> colours(samples.size() / static_cast<unsigned>(layout.colours));
    static_assert(sizeof(Lab) == 3 * sizeof(double));
    cmsDoTransform(transform.get(), samples.data(), colours.data(), static_cast<cmsUInt32Number>(colours.size()));
    return colours;
}

/// A profile's description, without what is not plain ASCII.
std::string described(cmsHPROFILE profile) {
    char text[256] = {};
    cmsGetProfileInfoASCII(profile, cmsInfoDescription, "en", "US", text, sizeof text - 1);
    constexpr std::size_t longest = 60;
    std::string plain;
    for (const char c : std::string(text))
        if (c >= ' ' && c <= '~' && plain.size() < longest) plain += c;
    while (!plain.empty() && plain.back() == ' ') plain.pop_back();
    return plain.empty() ? "a profile without a name" : plain;
}

bool leaves_colours_alone(const Profile& profile) {
    if (profile.model() == Model::cmyk) return false;
    const std::vector<std::uint8_t> before = probe(profile.model()), after = converted(profile, before);
    for (std::size_t i = 0; i < before.size(); ++i)
        if (std::abs(before[i] - after[i]) > 1) return false;
    return true;
}

}  // namespace

struct Profile::Handle {
    Opened opened;
    std::string key;   ///< digest of the profile's bytes; empty when there are none
    std::string name;
};

Profile Profile::read(std::span<const std::byte> icc, Model model) {
    Opened opened(cmsOpenProfileFromMem(icc.data(), static_cast<cmsUInt32Number>(icc.size())));
    if (!opened.get()) damaged("its colour profile cannot be read");
    const auto found = model_of(opened.get());
    if (!found) damaged("its colour profile is for neither grey, RGB nor CMYK");
    Sha256 digest;
    digest.add(icc);
    std::string name = described(opened.get());
    const Profile profile(std::make_shared<const Handle>(Handle{std::move(opened), digest.hex(), std::move(name)}));
    if (*found != model && !(model == Model::grey && *found == Model::rgb && profile.is_srgb()))
        damaged("its colour profile is for another kind of colour than its pixels have");
    return profile;
}

Profile Profile::of(const Primaries& primaries, Model model) {
    Opened opened = profile_of(primaries, model);
    if (!opened.get()) damaged("its white point and primaries (cHRM) are no colours");
    return Profile(std::make_shared<const Handle>(Handle{std::move(opened), "", "the gamma and primaries that it states"}));
}

std::string Profile::name() const { return handle_->name; }

double Profile::farthest_move() const {
    const std::vector<std::uint8_t> samples = probe(model()), after = converted(*this, samples);
    const std::vector<Lab> before = meant(handle_->opened.get(), {static_cast<int>(colours_of(model())), false, 1, false}, samples);
    const std::size_t each = after.size() / before.size();
    double farthest = 0;
    for (std::size_t i = 0; i < before.size(); ++i) {
        const std::uint8_t* pixel = &after[i * each];
        farthest = std::max(farthest, ciede2000(before[i], lab_of_srgb(pixel[0], pixel[each / 2], pixel[each - 1])));
    }
    return farthest;
}

Model Profile::model() const { return model_of(handle_->opened.get()).value_or(Model::rgb); }

bool Profile::is_srgb() const {
    if (handle_->key.empty()) return leaves_colours_alone(*this);
    static std::mutex mutex;
    static std::map<std::string, bool> known;
    {
        const std::lock_guard lock(mutex);
        if (const auto found = known.find(handle_->key); found != known.end()) return found->second;
    }
    const bool answer = leaves_colours_alone(*this);
    const std::lock_guard lock(mutex);
    if (known.size() >= 256) known.clear();  // a studio has a handful; a hostile kit must not fill the memory
    known.emplace(handle_->key, answer);
    return answer;
}

void Conversion::Close::operator()(void* transform) const { cmsDeleteTransform(transform); }

Conversion::Conversion(const Profile& profile, SampleLayout layout)
    : layout_(layout), transform_(transform_of(profile.handle().opened.get(), layout.colours == 1 ? SampleLayout{1, false, layout.bytes, false} : layout)) {
    if (!transform_) damaged("its colour profile cannot be used to convert its colours");
    if (layout.colours == 1) make_greys();
}

/// Without lcms's joined curve a pixel takes long, and there are no more greys than these.
void Conversion::make_greys() {
    if (layout_.bytes == 1) {
        std::vector<std::uint8_t> all(256), become(256);
        for (std::size_t v = 0; v < all.size(); ++v) all[v] = static_cast<std::uint8_t>(v);
        cmsDoTransform(transform_.get(), all.data(), become.data(), 256);
        greys_.assign(become.begin(), become.end());
    } else {
        std::vector<std::uint16_t> all(65536);
        for (std::size_t v = 0; v < all.size(); ++v) all[v] = static_cast<std::uint16_t>(v);
        greys_.resize(all.size());
        cmsDoTransform(transform_.get(), all.data(), greys_.data(), 65536);
    }
}

template <typename Sample>
void Conversion::apply_greys(const Sample* from, Sample* to, std::uint32_t pixels) const {
    const std::size_t each = layout_.alpha ? 2 : 1;
    for (std::size_t i = 0; i < pixels * each; ++i) to[i] = i % each ? from[i] : static_cast<Sample>(greys_[from[i]]);
}

void Conversion::apply(const void* from, void* to, std::uint32_t pixels) const {
    if (greys_.empty())
        cmsDoTransform(transform_.get(), from, to, pixels);
    else if (layout_.bytes == 1)
        apply_greys(static_cast<const std::uint8_t*>(from), static_cast<std::uint8_t*>(to), pixels);
    else
        apply_greys(static_cast<const std::uint16_t*>(from), static_cast<std::uint16_t*>(to), pixels);
}

const std::vector<std::byte>& srgb_profile() {
    static const std::vector<std::byte> bytes = [] {
        const Opened opened(cmsCreate_sRGBProfile());
        cmsUInt32Number size = 0;
        if (!opened.get()) throw std::bad_alloc();
        cmsSetProfileVersion(opened.get(), 4.2);  // what PDF 1.7 names: ICC.1:2004-10
        if (!cmsSaveProfileToMem(opened.get(), nullptr, &size)) throw std::bad_alloc();
        std::vector<std::byte> made(size);
        if (!cmsSaveProfileToMem(opened.get(), made.data(), &size)) throw std::bad_alloc();
        // ICC.1 7.2: bytes 24 to 35 are the date, bytes 84 to 99 the profile's digest, zero when it was not made.
        const std::uint8_t date[12] = {2000 >> 8, 2000 & 255, 0, 1, 0, 1, 0, 0, 0, 0, 0, 0};
        for (std::size_t i = 0; i < 12; ++i) made[24 + i] = std::byte{date[i]};
        for (std::size_t i = 84; i < 100; ++i) made[i] = std::byte{0};
        return made;
    }();
    return bytes;
}

}  // namespace qw::artwork
