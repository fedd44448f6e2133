// The drawing of a cook's timeline, for the window and for a picture alike.
#pragma once

#include "views/fire/timeline_content.h"
#include "views/theme/theme.h"

#include <QRectF>

class QPainter;

namespace rickyard::views {

// Where everything stands. Lanes share their left and right edges.
struct TimelineFrame {
    QRectF whole;
    QRectF key;
    QRectF temperatures;
    QRectF feeds;
    QRectF air; // empty when nothing is known of the air
    QRectF axis;
    double from = 0; // seconds after lighting at the left edge
    double to = 1;   // at the right edge

    [[nodiscard]] double xOf(double at) const
    {
        return temperatures.left() + (at - from) / (to - from) * temperatures.width();
    }
    [[nodiscard]] double atOf(double x) const
    {
        return from + (x - temperatures.left()) / temperatures.width() * (to - from);
    }
};

class TimelinePainter
{
public:
    TimelinePainter(const TimelineContent &content, const Theme &look);

    [[nodiscard]] TimelineFrame frame(const QSizeF &size, double from, double to) const;
    // Enough for every lane at that width.
    [[nodiscard]] double leastHeight(double width) const;
    void paint(QPainter &painter, const TimelineFrame &frame) const;
    // An upright line at the moment that is read.
    void paintReading(QPainter &painter, const TimelineFrame &frame, double at) const;

    // Degrees at the foot and the head of the lane of temperatures, in the yard's unit.
    [[nodiscard]] double low() const { return m_low; }
    [[nodiscard]] double high() const { return m_high; }

private:
    struct KeyEntry {
        QString words;
        int hue; // < 0: the target
    };
    [[nodiscard]] QVector<KeyEntry> keyEntries() const;
    [[nodiscard]] bool hasAir() const;
    template <class Place>
    int flowKey(double width, Place place) const; // rows
    [[nodiscard]] double yOf(const TimelineFrame &frame, double milli) const;
    void findRange();

    void paintKey(QPainter &painter, const TimelineFrame &frame) const;
    void paintScale(QPainter &painter, const TimelineFrame &frame) const;
    void paintAxis(QPainter &painter, const TimelineFrame &frame) const;
    void paintTarget(QPainter &painter, const TimelineFrame &frame) const;
    void paintFaults(QPainter &painter, const TimelineFrame &frame) const;
    void paintProbe(QPainter &painter, const TimelineFrame &frame, const ProbeCurve &probe,
                    int hue) const;
    void paintTyped(QPainter &painter, const TimelineFrame &frame) const;
    void paintOwnMarks(QPainter &painter, const TimelineFrame &frame) const;
    void paintFeeds(QPainter &painter, const TimelineFrame &frame) const;
    void paintNotes(QPainter &painter, const TimelineFrame &frame) const;
    void paintAir(QPainter &painter, const TimelineFrame &frame) const;
    void paintAirCourse(QPainter &painter, const TimelineFrame &frame,
                        const QVector<AirPoint> &course, double low, double high,
                        const QPen &pen) const;

    const TimelineContent &m_content;
    const Theme &m_look;
    QStringList m_probes;
    double m_low = 0;
    double m_high = 1;
    double m_step = 1;
};

} // namespace rickyard::views
