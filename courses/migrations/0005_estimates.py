import django.db.models.deletion
from django.conf import settings
from django.db import migrations, models


class Migration(migrations.Migration):
    dependencies = [
        ("courses", "0004_tried_pictures"),
    ]

    operations = [
        migrations.CreateModel(
            name="Estimate",
            fields=[
                ("id", models.BigAutoField(auto_created=True, primary_key=True, serialize=False, verbose_name="ID")),
                ("name", models.CharField(max_length=80)),
                ("made_at", models.DateTimeField()),
                ("asked", models.JSONField()),
                ("worked", models.JSONField()),
                ("left_out", models.JSONField(blank=True, default=list)),
                ("tried", models.BooleanField(default=False)),
                ("currency", models.CharField(blank=True, max_length=3)),
                ("used", models.JSONField(blank=True, default=dict)),
                ("used_at", models.DateTimeField(blank=True, null=True)),
                (
                    "person",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.CASCADE,
                        related_name="estimates",
                        to=settings.AUTH_USER_MODEL,
                    ),
                ),
            ],
            options={
                "ordering": ["-made_at", "-pk"],
            },
        ),
    ]
