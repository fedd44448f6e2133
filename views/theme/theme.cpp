#include "views/theme/theme.h"

#include <QFontDatabase>
#include <QFontMetricsF>

#include <algorithm>
#include <cmath>

namespace rickyard::views {

namespace {

struct Swatch {
    Role role;
    QRgb light;
    QRgb dark;
    QRgb night;
};

// The only literal colours of the program. Light is paper: warm neutrals, ink that is not black.
// Dark is the same warmth turned down, without glare. Night keeps luminance low throughout.
constexpr Swatch swatches[] = {
    {Role::Ground, 0xfff5f1e9, 0xff191816, 0xff0a0a09},
    {Role::Surface, 0xfffdfbf7, 0xff211f1d, 0xff11110f},
    {Role::SurfaceRaised, 0xfffffefc, 0xff2a2825, 0xff191815},
    {Role::Field, 0xfff1ece2, 0xff292723, 0xff181714},
    {Role::Ink, 0xff25221d, 0xffe8e3d9, 0xffc4bba4},
    {Role::InkMuted, 0xff68625a, 0xffa8a194, 0xff8f8874},
    {Role::InkFaint, 0xff999184, 0xff757065, 0xff5d584b},
    {Role::Hairline, 0xffe2dccf, 0xff35322d, 0xff262420},
    {Role::FieldEdge, 0xffbdb4a3, 0xff57524a, 0xff454136},
    {Role::Accent, 0xff1c5f6b, 0xff79bcc4, 0xff7fa39d},
    {Role::AccentInk, 0xfffdfbf7, 0xff0e2024, 0xff0a0f0e},
    {Role::Selection, 0xffd9e6e5, 0xff24383c, 0xff162120},
    {Role::Hover, 0xfff0ebe0, 0xff2a2824, 0xff1a1916},
    {Role::Good, 0xff466526, 0xffa3c27c, 0xff8fa673},
    {Role::Watch, 0xff865700, 0xffe0b45f, 0xffb8975a},
    {Role::Act, 0xffa53a25, 0xffee9a85, 0xffc08a78},
    {Role::Info, 0xff4c5694, 0xffa9b3e6, 0xff9097b4},
    {Role::ChartA, 0xff1f6f7c, 0xff79bcc4, 0xff7fa39d},
    {Role::ChartB, 0xffa86f14, 0xffdcae62, 0xffb8975a},
    {Role::ChartC, 0xff7c4a80, 0xffc79bca, 0xffa48aa6},
    {Role::ChartD, 0xff5d7731, 0xffa3c27c, 0xff8fa673},
    {Role::ChartE, 0xffb0584b, 0xffe59c8d, 0xffbb8b7f},
    {Role::ChartF, 0xff55657f, 0xffa3b3cc, 0xff8d97a6},
    {Role::Band, 0x2b1f6f7c, 0x3379bcc4, 0x337fa39d},
    {Role::Focus, 0xff1c5f6b, 0xff8fd0d8, 0xff93b8b2},
    {Role::Shadow, 0x1a3a3022, 0x66000000, 0x66000000},
};

struct Type {
    TextStyle style;
    double pixels;
    QFont::Weight weight;
    double spacing; // per cent of the advance
};

constexpr Type types[] = {
    {TextStyle::Display, 32, QFont::Normal, 97.5},
    {TextStyle::Title, 24, QFont::Normal, 98},
    {TextStyle::Heading, 15.5, QFont::DemiBold, 99},
    {TextStyle::Body, 14, QFont::Normal, 100},
    {TextStyle::BodyStrong, 14, QFont::DemiBold, 99},
    {TextStyle::Label, 13, QFont::Normal, 100},
    {TextStyle::Caption, 12, QFont::Normal, 100},
    {TextStyle::NumeralHuge, 60, QFont::Normal, 95},
    {TextStyle::NumeralLarge, 32, QFont::Normal, 96.5},
    {TextStyle::Figures, 14, QFont::Normal, 100},
};

QString textFamily()
{
    const QStringList present = QFontDatabase::families();
    for (const QString &family : {QStringLiteral("Inter"), QStringLiteral("DejaVu Sans")}) {
        if (present.contains(family))
            return family;
    }
    return QFont().family();
}

bool hasEqualDigits(const QFont &font)
{
    const QFontMetricsF metrics(font);
    const double width = metrics.horizontalAdvance(u'0');
    for (char16_t digit = u'1'; digit <= u'9'; ++digit) {
        if (std::abs(metrics.horizontalAdvance(QChar(digit)) - width) > 0.01)
            return false;
    }
    return true;
}

// Qt 6.4 cannot switch a font feature on, so columns of figures fall back to a family whose
// digits are equally wide as drawn.
QString figureFamily(const QString &text)
{
    for (const QString &family :
         {text, QStringLiteral("DejaVu Sans"), QStringLiteral("Liberation Sans")}) {
        QFont probe(family);
        probe.setPixelSize(40);
        if (hasEqualDigits(probe))
            return family;
    }
    return text;
}

// DejaVu draws larger than its size says; one factor brings it to the colour of other families.
double opticalFactor(const QString &family)
{
    return family.startsWith(QLatin1String("DejaVu")) ? 0.94 : 1.0;
}

double linear(double channel)
{
    return channel <= 0.04045 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
}

double luminance(const QColor &color)
{
    return 0.2126 * linear(color.redF()) + 0.7152 * linear(color.greenF()) +
           0.0722 * linear(color.blueF());
}

} // namespace

Theme Theme::make(Mode mode, double bodyPixels)
{
    Theme theme;
    theme.mode_ = mode == Mode::System ? Mode::Light : mode;
    theme.scale_ = std::clamp(bodyPixels, 9.0, 56.0) / 14.0;
    for (const Swatch &swatch : swatches) {
        const QRgb value = theme.mode_ == Mode::Light  ? swatch.light
                           : theme.mode_ == Mode::Dark ? swatch.dark
                                                       : swatch.night;
        theme.colors_[static_cast<size_t>(swatch.role)] = QColor::fromRgba(value);
    }
    const QString text = textFamily();
    const QString figures = figureFamily(text);
    for (const Type &type : types) {
        // Only columns need digits of one width; a large number keeps the family of its words.
        const QString &family = type.style == TextStyle::Figures ? figures : text;
        QFont font(family);
        const double pixels = type.pixels * theme.scale_ * opticalFactor(family);
        font.setPixelSize(std::max(8, static_cast<int>(std::lround(pixels))));
        font.setWeight(type.weight);
        font.setLetterSpacing(QFont::PercentageSpacing, type.spacing);
        font.setHintingPreference(QFont::PreferVerticalHinting);
        theme.fonts_[static_cast<size_t>(type.style)] = font;
    }
    return theme;
}

QColor Theme::soft(Role role) const
{
    const QColor top = color(role);
    const QColor under = color(Role::Surface);
    const float share = isDark() ? 0.14F : 0.11F;
    const auto mix = [share](float a, float b) { return a * share + b * (1.0F - share); };
    return QColor::fromRgbF(mix(top.redF(), under.redF()), mix(top.greenF(), under.greenF()),
                            mix(top.blueF(), under.blueF()));
}

Role Theme::chartRole(int index)
{
    const int count = 6;
    const int turn = ((index % count) + count) % count;
    return static_cast<Role>(static_cast<int>(Role::ChartA) + turn);
}

int Theme::px(double pixels) const
{
    if (pixels <= 0.0)
        return 0;
    return std::max(1, static_cast<int>(std::lround(pixels * scale_)));
}

int Theme::space(int step) const
{
    static constexpr int steps[] = {0, 4, 8, 12, 16, 24, 32, 48, 64};
    return px(steps[std::clamp(step, 0, 8)]);
}

QPalette Theme::palette() const
{
    QPalette palette;
    const auto set = [&](QPalette::ColorRole to, Role role) { palette.setColor(to, color(role)); };
    set(QPalette::Window, Role::Ground);
    set(QPalette::WindowText, Role::Ink);
    set(QPalette::Base, Role::Surface);
    set(QPalette::AlternateBase, Role::Ground);
    set(QPalette::Text, Role::Ink);
    set(QPalette::Button, Role::Field);
    set(QPalette::ButtonText, Role::Ink);
    set(QPalette::BrightText, Role::AccentInk);
    set(QPalette::Highlight, Role::Selection);
    set(QPalette::HighlightedText, Role::Ink);
    set(QPalette::PlaceholderText, Role::InkMuted);
    set(QPalette::ToolTipBase, Role::SurfaceRaised);
    set(QPalette::ToolTipText, Role::Ink);
    set(QPalette::Link, Role::Accent);
    set(QPalette::LinkVisited, Role::Accent);
    set(QPalette::Light, Role::SurfaceRaised);
    set(QPalette::Midlight, Role::Hairline);
    set(QPalette::Mid, Role::Hairline);
    set(QPalette::Dark, Role::FieldEdge);
    set(QPalette::Shadow, Role::FieldEdge);
    for (const QPalette::ColorRole role :
         {QPalette::WindowText, QPalette::Text, QPalette::ButtonText, QPalette::HighlightedText})
        palette.setColor(QPalette::Disabled, role, color(Role::InkFaint));
    return palette;
}

bool isDarkPalette(const QPalette &palette)
{
    return luminance(palette.color(QPalette::Active, QPalette::Window)) <
           luminance(palette.color(QPalette::Active, QPalette::WindowText));
}

double contrastRatio(const QColor &first, const QColor &second)
{
    const double a = luminance(first);
    const double b = luminance(second);
    return (std::max(a, b) + 0.05) / (std::min(a, b) + 0.05);
}

} // namespace rickyard::views
