// A cook's timeline in a widget: drag or arrow keys move it, the wheel or + and - zoom, 0 shows the
// whole. The pointer, or Shift with the arrows, reads off a moment; Ctrl with the arrows goes from
// feed to feed and mark to mark. The wheel zooms when the timeline has the focus (or with Ctrl):
// otherwise it scrolls the page, as a hand passing over it expects.
#pragma once

#include "views/fire/timeline_content.h"

#include <QWidget>

namespace rickyard::views {

class TimelineView : public QWidget
{
    Q_OBJECT

public:
    explicit TimelineView(QWidget *parent = nullptr);

    // Another cook is shown whole; the same cook keeps its stretch.
    void setContent(const TimelineContent &content);
    [[nodiscard]] const TimelineContent &content() const { return m_content; }

    [[nodiscard]] double from() const { return m_from; }
    [[nodiscard]] double to() const { return m_to; }
    [[nodiscard]] bool isWhole() const;
    // Kept within the cook, and no shorter than 20 seconds.
    void showStretch(double from, double to);
    void showWhole();
    // About the moment `at`; factor > 1 shows less.
    void zoom(double factor, double at);
    void zoomIn() { zoom(1.5, middle()); }
    void zoomOut() { zoom(1 / 1.5, middle()); }
    void moveBy(double seconds) { showStretch(m_from + seconds, m_to + seconds); }
    [[nodiscard]] std::optional<double> readingAt() const { return m_reading; }

    // .png (twice the size) or .svg, in the light theme; the reason when it fails.
    std::optional<QString> exportPicture(const QString &path) const;

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

Q_SIGNALS:
    void stretchChanged();
    void readingChanged(const QString &words); // empty when nothing is read

protected:
    bool event(QEvent *event) override;
    void paintEvent(QPaintEvent *event) override;
    void keyPressEvent(QKeyEvent *event) override;
    void wheelEvent(QWheelEvent *event) override;
    void mousePressEvent(QMouseEvent *event) override;
    void mouseMoveEvent(QMouseEvent *event) override;
    void mouseReleaseEvent(QMouseEvent *event) override;
    void mouseDoubleClickEvent(QMouseEvent *event) override;
    void leaveEvent(QEvent *event) override;
    void focusInEvent(QFocusEvent *event) override;
    void focusOutEvent(QFocusEvent *event) override;

private:
    [[nodiscard]] double middle() const { return m_reading.value_or((m_from + m_to) / 2); }
    [[nodiscard]] double secondsAPixel() const;
    [[nodiscard]] double momentAt(double x) const;
    void read(std::optional<double> at);
    void readEvent(int direction);

    TimelineContent m_content;
    double m_from = 0;
    double m_to = 3600;
    std::optional<double> m_reading;
    std::optional<double> m_dragX; // where the pointer was last while dragging
};

} // namespace rickyard::views
