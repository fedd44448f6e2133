#include "views/theme/theme_hub.h"

#include "views/theme/style.h"

#include <QApplication>
#include <QEvent>
#include <QFontInfo>
#include <QScreen>
#include <QVariant>
#include <QWidget>

#include <algorithm>

namespace rickyard::views {

namespace {

constexpr char scopeProperty[] = "rickyardThemeScope";

// Desktops that say nothing give 9 pt; below 14 px the program's tables are hard to read.
double desktopBodyPixels()
{
    const double pixels = QFontInfo(QApplication::font()).pixelSize();
    return std::clamp(pixels, 14.0, 40.0);
}

} // namespace

ThemeHub::ThemeHub(QApplication &application)
    : QObject(&application), application_(application), desktopPixels_(desktopBodyPixels())
{
    application_.installEventFilter(this);
}

ThemeHub::~ThemeHub() = default;

ThemeHub &ThemeHub::apply(QApplication &application, Mode mode, double textScale)
{
    ThemeHub *hub = of();
    if (hub == nullptr)
        hub = new ThemeHub(application);
    hub->put(mode, textScale);
    return *hub;
}

ThemeHub *ThemeHub::of(const QWidget *)
{
    return qApp == nullptr ? nullptr
                           : qApp->findChild<ThemeHub *>(QString(), Qt::FindDirectChildrenOnly);
}

void ThemeHub::put(Mode mode, double textScale)
{
    applying_ = true;
    mode_ = mode;
    textScale_ = std::clamp(textScale, 0.75, 3.0);
    const double pixels = desktopPixels_ * textScale_;
    light_ = Theme::make(Mode::Light, pixels);
    dark_ = Theme::make(Mode::Dark, pixels);
    night_ = Theme::make(Mode::Night, pixels);
    const bool systemDark = mode == Mode::System && systemIsDark();
    theme_ = mode == Mode::System ? (systemDark ? dark_ : light_) : themeFor(mode);
    if (qobject_cast<RickyardStyle *>(QApplication::style()) == nullptr)
        QApplication::setStyle(new RickyardStyle);
    QApplication::setPalette(theme_.palette());
    QApplication::setFont(theme_.font(TextStyle::Body));
    // Sizes come from the style, which asks the theme: every widget has to measure itself anew.
    const QWidgetList all = QApplication::allWidgets();
    for (QWidget *widget : all) {
        const QVariant scope = widget->property(scopeProperty);
        if (scope.isValid())
            widget->setPalette(themeFor(static_cast<Mode>(scope.toInt())).palette());
        QEvent restyled(QEvent::StyleChange);
        QApplication::sendEvent(widget, &restyled);
        widget->updateGeometry();
        widget->update();
    }
    applying_ = false;
    emit changed();
}

bool ThemeHub::systemIsDark() const
{
    // An empty palette hands the decision back to the desktop for as long as we look at it.
    QApplication::setPalette(QPalette());
    return isDarkPalette(QApplication::palette());
}

void ThemeHub::setScope(QWidget *root, Mode mode)
{
    if (mode == Mode::System) {
        root->setProperty(scopeProperty, QVariant());
        root->setPalette(QPalette());
    } else {
        root->setProperty(scopeProperty, static_cast<int>(mode));
        root->setPalette(themeFor(mode).palette());
    }
    emit changed();
}

const Theme &ThemeHub::themeFor(Mode mode) const
{
    switch (mode) {
    case Mode::Light:
        return light_;
    case Mode::Dark:
        return dark_;
    case Mode::Night:
        return night_;
    case Mode::System:
        break;
    }
    return theme_;
}

bool ThemeHub::eventFilter(QObject *watched, QEvent *event)
{
    // The desktop switched between light and dark while the program runs.
    if (event->type() == QEvent::ThemeChange && !applying_ && mode_ == Mode::System &&
        watched->isWindowType())
        QMetaObject::invokeMethod(
            this, [this] { put(mode_, textScale_); }, Qt::QueuedConnection);
    return QObject::eventFilter(watched, event);
}

const Theme &theme(const QWidget *widget)
{
    const ThemeHub *hub = ThemeHub::of();
    if (hub == nullptr) {
        static const Theme fallback = Theme::make(Mode::Light);
        return fallback;
    }
    for (const QWidget *at = widget; at != nullptr; at = at->parentWidget()) {
        const QVariant scope = at->property(scopeProperty);
        if (scope.isValid())
            return hub->themeFor(static_cast<Mode>(scope.toInt()));
    }
    return hub->theme();
}

void onTheme(QWidget *widget, const std::function<void()> &action)
{
    action();
    if (ThemeHub *hub = ThemeHub::of())
        QObject::connect(hub, &ThemeHub::changed, widget, action);
}

} // namespace rickyard::views
