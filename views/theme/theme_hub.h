// Where the current theme lives: one object, owned by the application, that applies it and says
// when it changed. There is no global: widgets reach it through theme(this).
#pragma once

#include "views/theme/theme.h"

#include <QObject>

#include <functional>

class QApplication;
class QWidget;

namespace rickyard::views {

class ThemeHub : public QObject
{
    Q_OBJECT

public:
    // Remembers the desktop's font and palette before anything is changed, and is found later
    // through the application, which owns it.
    explicit ThemeHub(QApplication &application);
    ~ThemeHub() override;

    // Makes the hub of the application if there is none yet, and puts a mode into force. textScale
    // multiplies the desktop's text size (1.0 to 3.0).
    static ThemeHub &apply(QApplication &application, Mode mode, double textScale = 1.0);
    // The hub of the running application, or null when none was made (bare tests).
    static ThemeHub *of(const QWidget *widget = nullptr);

    // Gives one widget and all in it a mode of its own (the Fire page at night). Mode::System
    // takes it back.
    void setScope(QWidget *root, Mode mode);

    const Theme &theme() const { return theme_; }
    const Theme &themeFor(Mode mode) const;
    Mode mode() const { return mode_; }
    double textScale() const { return textScale_; }

    bool eventFilter(QObject *watched, QEvent *event) override;

signals:
    void changed();

private:
    void put(Mode mode, double textScale);
    bool systemIsDark() const;

    QApplication &application_;
    Mode mode_ = Mode::Light;
    double textScale_ = 1.0;
    double desktopPixels_ = 14.0;
    Theme theme_;
    Theme light_;
    Theme dark_;
    Theme night_;
    bool applying_ = false;
};

// The theme a widget stands in: its scope's if it lies in one, else the application's.
const Theme &theme(const QWidget *widget = nullptr);

// Runs an action now and at every change of theme for as long as the widget lives.
void onTheme(QWidget *widget, const std::function<void()> &action);

} // namespace rickyard::views
