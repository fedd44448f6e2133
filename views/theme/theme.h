// The look as a value: colours by role, fonts by text style, distances by steps.
//
// A Theme is made once per mode and text scale and then only read. Widgets never name a colour,
// a font or a pixel count; they ask for a role, a style and a number of steps, so that light,
// dark, night and 200 % come from one place.
#pragma once

#include <QColor>
#include <QFont>
#include <QPalette>
#include <QString>

#include <array>

namespace rickyard::views {

// How the program is to be seen. System follows the desktop; Night is for the Fire page at the pit:
// a very dim ground and warm, low-luminance ink that is still read at two metres.
enum class Mode { System, Light, Dark, Night };

// What a colour is for. Semantic roles (Good, Watch, Act, Info) are never shown without a word or
// a shape beside them.
enum class Role {
    Ground,        // the window
    Surface,       // cards, tables, lists
    SurfaceRaised, // menus, popups, tooltips
    Field,         // the soft fill of editors and quiet buttons
    Ink,           // text
    InkMuted,      // labels, units, captions
    InkFaint,      // disabled text, grid labels of no importance
    Hairline,      // separators and gridlines
    FieldEdge,     // the outline of editors and buttons
    Accent,        // the one accent: primary action, current page, focus
    AccentInk,     // text upon the accent
    Selection,     // selected rows and selected text (ink stays ink)
    Hover,         // what the pointer is over
    Good,
    Watch,
    Act,
    Info,
    ChartA,
    ChartB,
    ChartC,
    ChartD,
    ChartE,
    ChartF,
    Band,  // the interval around an expected line (translucent)
    Focus, // the focus ring
    Shadow,
    Count
};

enum class TextStyle {
    Display,      // one answer on a page
    Title,        // the name of a page
    Heading,      // the name of a card or a section
    Body,         // everything that is read
    BodyStrong,   // the same, stressed
    Label,        // names of fields and columns
    Caption,      // notes, units, axis labels
    NumeralHuge,  // the number of an answer
    NumeralLarge, // a number that stands beside others
    Figures,      // figures in tables: all digits equally wide
    Count
};

class Theme
{
public:
    // Builds the theme of a mode (System is taken as Light here; ThemeHub resolves it).
    // bodyPixels is the height of body text in device-independent pixels and scales everything.
    static Theme make(Mode mode, double bodyPixels = 14.0);

    Mode mode() const { return mode_; }
    bool isDark() const { return mode_ == Mode::Dark || mode_ == Mode::Night; }

    QColor color(Role role) const { return colors_[static_cast<size_t>(role)]; }
    // A tint of a role, to lie under text in Ink: pills, notices, hover of a primary button.
    QColor soft(Role role) const;
    // Role of the n-th series of a chart, in turn.
    static Role chartRole(int index);

    QFont font(TextStyle style) const { return fonts_[static_cast<size_t>(style)]; }

    // 1.0 at 14 px body text; 2.0 when the text is twice as large.
    double scale() const { return scale_; }
    // A length given in pixels at 100 %, scaled and rounded (at least 1 when asked for > 0).
    int px(double pixels) const;
    // The spacing scale: 0, 4, 8, 12, 16, 24, 32, 48, 64 pixels at 100 % for steps 0..8.
    int space(int step) const;

    int controlHeight() const { return px(36); }
    int rowHeight() const { return px(38); }
    int iconSize() const { return px(20); }
    int radius() const { return px(7); }

    QPalette palette() const;

private:
    Mode mode_ = Mode::Light;
    double scale_ = 1.0;
    std::array<QColor, static_cast<size_t>(Role::Count)> colors_;
    std::array<QFont, static_cast<size_t>(TextStyle::Count)> fonts_;
};

// True when a palette is a dark one: its window is darker than its text.
bool isDarkPalette(const QPalette &palette);

// Contrast of two opaque colours, 1 to 21 (WCAG 2.1, relative luminance).
double contrastRatio(const QColor &first, const QColor &second);

} // namespace rickyard::views
