import django.db.models.deletion
from django.conf import settings
from django.db import migrations, models


class Migration(migrations.Migration):
    dependencies = [("courses", "0002_record")]

    operations = [
        migrations.CreateModel(
            name="HungPicture",
            fields=[
                ("id", models.BigAutoField(auto_created=True, primary_key=True, serialize=False, verbose_name="ID")),
                ("code", models.SlugField(max_length=32, unique=True)),
                ("scene", models.JSONField()),
                ("light", models.CharField(max_length=8)),
                ("lamps", models.JSONField()),
                ("renderer", models.PositiveSmallIntegerField()),
                (
                    "purpose",
                    models.CharField(
                        choices=[("lesson", "lesson"), ("lookalike", "look-alikes"), ("paper", "attempt")], max_length=9
                    ),
                ),
                ("measured", models.JSONField(default=dict)),
                ("hung_at", models.DateTimeField(auto_now_add=True)),
                (
                    "owner",
                    models.ForeignKey(
                        blank=True,
                        null=True,
                        on_delete=django.db.models.deletion.CASCADE,
                        related_name="pictures",
                        to=settings.AUTH_USER_MODEL,
                    ),
                ),
            ],
            options={
                "ordering": ["pk"],
                "constraints": [
                    models.CheckConstraint(
                        condition=models.Q(("purpose", "paper"), ("owner", None), _connector="XOR"),
                        name="a_picture_of_an_attempt_has_an_owner_and_no_other_has",
                    )
                ],
            },
        ),
    ]
